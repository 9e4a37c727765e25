// Writes the page of the library, stdlib/LIBRARY.md, from its modules: `npm run library`. A test fails when it is stale.

import { writeFileSync } from "node:fs";
import { libraryPage } from "../engine/session/index.ts";
import { library } from "./index.ts";

writeFileSync(new URL("./LIBRARY.md", import.meta.url), libraryPage(library));

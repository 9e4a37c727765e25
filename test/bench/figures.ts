// The figures that the bench measures.

import { nearest } from "../../engine/base/index.ts";
import { bench, milliseconds } from "./harness.ts";

const NAMES = Array.from({ length: 2000 }, (_, at) => `strip_load_${at}`);

bench("nearest of 2000 names", "ms", () => milliseconds(() => nearest("stirp_load_1999", NAMES)));

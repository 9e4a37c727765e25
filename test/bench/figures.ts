// The figures that the bench measures, by what they are about.

import "./evaluation.ts";
import "./editing.ts";
import "./packages.ts";

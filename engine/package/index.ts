// The door of engine/package: calc packages made, verified and compared, and the files in them.

export { compareResults, type Difference, type Side } from "./compare.ts";
export { type MadePackage, type Manifest, makePackage, type PackageOptions, type Paper } from "./make-package.ts";
export { type Face, faces } from "./pdf/pen.ts";
export { type PdfOptions, type PrintFonts, sheetPdf } from "./pdf.ts";
export { type OpenPackage, readPackage } from "./read-package.ts";
export { PackageRefused } from "./refused.ts";
export { type CheckEntry, type InputEntry, type NumberValue, type ResultEntry, type Results, readResults, resultsJson } from "./results.ts";
export { type Finding, type Verified, type VerifyOptions, verifyPackage } from "./verify.ts";

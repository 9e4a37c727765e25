// Types of the one function of subset-font that is used here; the package has none of its own.

declare module "subset-font" {
  export interface SubsetOptions {
    readonly targetFormat?: "sfnt" | "woff" | "woff2";
    readonly preserveNameIds?: readonly number[];
    readonly keepAllGlyphs?: boolean;
    readonly noHinting?: boolean;
  }
  export default function subsetFont(font: Uint8Array, text: string | null, options: SubsetOptions): Promise<Uint8Array>;
}

// A scene as the text of one SVG file: presentation attributes alone, no script, no style sheet, nothing from outside.

import { type Painter, type SvgElement, svgElements } from "./elements.ts";
import { type Palette, printPalette } from "./palette.ts";
import { tidyNumber as n, type Scene } from "./scene.ts";

export interface SvgOptions {
  readonly palette?: Palette;
  /** Puts the palette's paper under the figure. */
  readonly ground?: boolean;
  /** Makes the ids of title and description unique on a page with several figures. */
  readonly id?: string;
  /** Width and height in millimetres instead of pixels, for print. */
  readonly millimetres?: boolean;
}

const FONTS = "'Jointwright Sans','IBM Plex Sans','DejaVu Sans',sans-serif";
const MILLIMETRES_A_PIXEL = 25.4 / 96;

/** Well-formed XML; the same scene and options give the same bytes. */
export function sceneSvg(scene: Scene, options: SvgOptions = {}): string {
  const palette = options.palette ?? printPalette;
  const painter: Painter = (role, what) => ({ [what]: palette[role] });
  const id = options.id ?? "figure";
  const size = (value: number): string => (options.millimetres === true ? `${n(value * MILLIMETRES_A_PIXEL)}mm` : n(value));
  const ground = options.ground === true ? `<rect width="${n(scene.width)}" height="${n(scene.height)}" fill="${palette.paper}"/>\n` : "";
  const body = svgElements(scene, painter).map(written).join("\n");
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size(scene.width)}" height="${size(scene.height)}" viewBox="0 0 ${n(scene.width)} ${n(scene.height)}" role="img" aria-labelledby="${escaped(id)}-title" font-family="${FONTS}" stroke-linejoin="round">
<title id="${escaped(id)}-title">${escaped(scene.alternative)}</title>
${ground}${body}
</svg>
`;
}

function written({ name, attributes, text }: SvgElement): string {
  const list = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escaped(value)}"`)
    .join("");
  return text === undefined ? `<${name}${list}/>` : `<${name}${list}>${escaped(text)}</${name}>`;
}

/** For text and for attributes in double quotes; what XML cannot hold at all is left out. */
function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

// Base64 of bytes, as data addresses and style digests write it.

const SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

export function base64(bytes: Uint8Array): string {
  const out: string[] = [];
  for (let at = 0; at < bytes.length; at += 3) {
    const [a, b, c] = [bytes[at] as number, bytes[at + 1], bytes[at + 2]];
    const bits = (a << 16) | ((b ?? 0) << 8) | (c ?? 0);
    out.push(
      SIGNS[bits >> 18] as string,
      SIGNS[(bits >> 12) & 63] as string,
      b === undefined ? "=" : (SIGNS[(bits >> 6) & 63] as string),
      c === undefined ? "=" : (SIGNS[bits & 63] as string),
    );
  }
  return out.join("");
}

export const base64OfHex = (hex: string): string =>
  base64(Uint8Array.from({ length: hex.length / 2 }, (_, i) => Number.parseInt(hex.slice(2 * i, 2 * i + 2), 16)));

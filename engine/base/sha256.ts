// SHA-256 of bytes (FIPS 180-4), computed here because the surroundings' own is asynchronous and not the same everywhere.

/** 64 hexadecimal digits. */
export function sha256(bytes: Uint8Array): string {
  const state = Uint32Array.from(INITIAL);
  const words = new Uint32Array(64);
  const padded = pad(bytes);
  const view = new DataView(padded.buffer);
  for (let at = 0; at < padded.length; at += 64) block(state, words, view, at);
  return [...state].map((word) => word.toString(16).padStart(8, "0")).join("");
}

/** UTF-8 bytes of a text; a half of a surrogate pair becomes U+FFFD. */
export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A one, zeros, and the length in bits, to whole blocks of 64 bytes. */
function pad(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const length = Math.ceil((bytes.length + 9) / 64) * 64;
  const padded = new Uint8Array(length);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(length - 8, Math.floor(bytes.length / 0x20000000));
  view.setUint32(length - 4, (bytes.length << 3) >>> 0);
  return padded;
}

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

function block(state: Uint32Array, words: Uint32Array, view: DataView, at: number): void {
  for (let i = 0; i < 16; i += 1) words[i] = view.getUint32(at + 4 * i);
  for (let i = 16; i < 64; i += 1) {
    const [early, late] = [words[i - 15] as number, words[i - 2] as number];
    const low = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
    const high = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
    words[i] = (words[i - 16] as number) + low + (words[i - 7] as number) + high;
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
  for (let i = 0; i < 64; i += 1) {
    const first = h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + (ROUND[i] as number) + (words[i] as number);
    const second = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    state[i] = (state[i] as number) + word;
  });
}

/** The first 32 bits behind the point of the roots of the first primes: of 64 cube roots, of 8 square roots. */
const PRIMES: readonly number[] = (() => {
  const found: number[] = [];
  for (let n = 2; found.length < 64; n += 1) if (found.every((prime) => n % prime !== 0)) found.push(n);
  return found;
})();

/** Found by halving on exact integers: a floating root is not the same on every machine. */
function rootBits(prime: number, degree: 2 | 3): number {
  const scaled = BigInt(prime) << BigInt(32 * degree);
  let [low, high] = [0n, 1n << 40n];
  while (low < high) {
    const middle = (low + high + 1n) >> 1n;
    if (middle ** BigInt(degree) <= scaled) low = middle;
    else high = middle - 1n;
  }
  return Number(low & 0xffffffffn);
}

const ROUND: readonly number[] = PRIMES.map((prime) => rootBits(prime, 3));
const INITIAL: readonly number[] = PRIMES.slice(0, 8).map((prime) => rootBits(prime, 2));

// Streams of a PDF packed by one compressor everywhere: the writer's own is the system's, whose bytes change from one to the next.

import { zlibSync } from "fflate";

/** An object of the file while it is written, as far as it is touched here. */
interface Reference {
  compress: boolean;
  buffer: Uint8Array | Uint8Array[];
  finalize: () => void;
}

/** From now on every object packs its own stream before the writer would. Objects that ask for none keep none. */
export function useSameCompression(document: PDFKit.PDFDocument): void {
  const open = document as unknown as { ref: (data: unknown) => Reference };
  const make = open.ref.bind(document);
  open.ref = (data) => {
    const reference = make(data);
    const finalize = reference.finalize.bind(reference);
    reference.finalize = () => {
      if (reference.compress && Array.isArray(reference.buffer) && reference.buffer.length > 0) {
        reference.buffer = [zlibSync(joined(reference.buffer), { level: 6 })];
        reference.compress = false;
      }
      finalize();
    };
    return reference;
  };
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

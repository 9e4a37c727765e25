// Types of the writer's way to bytes; the package of its types has none.

declare module "pdfkit/output" {
  export function toBytes(document: PDFKit.PDFDocument): Promise<Uint8Array>;
}

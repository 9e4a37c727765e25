// The tree of the document for readers by ear: every stretch of content is marked and hung under its element.

import type { Node } from "./slab.ts";

export interface Structure {
  readonly content: (within: readonly Node[], draw: () => void) => void;
  /** Drawn without a place in the tree: rules, frames, running heads. */
  readonly artifact: (draw: () => void) => void;
  readonly end: () => void;
}

export function createStructure(document: PDFKit.PDFDocument): Structure {
  const elements = new Map<Node, PDFKit.PDFStructureElement>();
  const roots: PDFKit.PDFStructureElement[] = [];

  const elementOf = (within: readonly Node[]): PDFKit.PDFStructureElement => {
    const node = within[within.length - 1] as Node;
    const known = elements.get(node);
    if (known !== undefined) return known;
    const made = document.struct(node.type as never, node.alt === undefined ? {} : { alt: node.alt });
    elements.set(node, made);
    if (within.length === 1) {
      document.addStructure(made);
      roots.push(made);
    } else elementOf(within.slice(0, -1)).add(made);
    return made;
  };

  return {
    content: (within, draw) => {
      const node = within[within.length - 1] as Node;
      const element = elementOf(within);
      const content = document.markStructureContent(node.type as never);
      draw();
      document.endMarkedContent();
      element.add(content);
    },
    artifact: (draw) => {
      document.markContent("Artifact", { type: "Layout" });
      draw();
      document.endMarkedContent();
    },
    end: () => {
      for (const root of roots) root.end();
    },
  };
}

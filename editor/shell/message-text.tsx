// A message of the engine in a panel.

import { messagePieces } from "../pad/message-pieces.ts";

export function MessageText({ text }: { readonly text: string }) {
  return (
    <>
      {messagePieces(text).map(({ code, words }, index) => {
        const key = `${index} ${words}`;
        return code ? <code key={key}>{words}</code> : <span key={key}>{words}</span>;
      })}
    </>
  );
}

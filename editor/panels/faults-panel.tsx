// Faults and notices in the order of the text, each with its place and its mend.

import { plainMessage } from "../pad/message-pieces.ts";
import { MessageText } from "../shell/message-text.tsx";
import type { PanelProps } from "./side-panel.tsx";

export function FaultsPanel({ desk }: PanelProps) {
  const messages = desk.messages();
  if (messages.length === 0) return <p class="panel-empty">No faults and no notices.</p>;
  return (
    <ul class="panel-list">
      {messages.map((message) => (
        <li key={`${message.code} ${message.from}`}>
          <button type="button" class="row" onClick={() => desk.leap(message.from, message.to)}>
            <span class={message.severity === "fault" ? "tone-fails" : "tone-open"}>
              <span class="shape" aria-hidden="true">
                {message.severity === "fault" ? "✕" : "◇"}
              </span>
              <span class="state-word">{message.severity}</span>
            </span>
            <span class="row-text">
              <MessageText text={message.text} />
            </span>
            <span class="row-place">line {message.line}</span>
          </button>
          {message.mend !== undefined && (
            <button
              type="button"
              class="boxed row-mend"
              onClick={() => {
                desk.leap(message.from);
                desk.pad.run("mend");
              }}
            >
              Accept <span>{plainMessage(message.mend)}</span>
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}

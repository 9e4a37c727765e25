// The worker's side of the link: one session, asks in, replies out.

import type { Session, SessionTools } from "../../engine/session/index.ts";
import type { Answers, Ask, Beside, Question, Reply } from "./protocol.ts";

/** Gives the function that answers one ask after the other. A throw of the session is reported and does not end the host. */
export function hostSession(session: Session, send: (reply: Reply) => void): (ask: Ask) => void {
  const observed = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));
  return (ask) => {
    if (ask.kind === "question") {
      try {
        send({ kind: "answer", id: ask.id, answer: answer(session, ask.file, ask.question) });
      } catch (fault) {
        send({ kind: "broken", id: ask.id, observed: observed(fault) });
      }
      return;
    }
    try {
      if (ask.kind === "open") {
        const kept = new Set([ask.file, ...ask.beside.map(({ file }) => file)]);
        // The open one too: its first snapshot must tell everything, also when it was told before.
        for (const file of session.files()) if (!kept.has(file) || file === ask.file) session.remove(file);
        put(session, ask.beside);
        session.put(ask.file, ask.text);
      } else if (ask.kind === "beside") put(session, ask.beside);
      else session.edit(ask.file, ask.changes);
      send({ kind: "snapshot", version: ask.version, snapshot: session.snapshot(ask.file) });
    } catch (fault) {
      send({ kind: "broken", version: ask.version, observed: observed(fault) });
    }
  };
}

function put(session: Session, beside: readonly Beside[]): void {
  const known = new Set(session.files());
  for (const { file, text } of beside) {
    if (text === undefined) session.remove(file);
    // A file that is as it was is not read again: another notebook of the folder may be open next.
    else if (!known.has(file) || session.text(file) !== text) session.put(file, text);
  }
}

/** The arguments were typed where the question was asked. */
function useTool(tools: SessionTools, tool: keyof SessionTools, args: readonly unknown[]): unknown {
  return (tools[tool] as (...given: readonly unknown[]) => unknown)(...args);
}

function answer(session: Session, file: string, question: Question): Answers[keyof Answers] {
  if (question.about === "complete") return session.complete(file, question.offset);
  if (question.about === "hover") return session.hover(file, question.offset);
  if (question.about === "tidy") return session.tidy(file);
  if (question.about === "tool") return useTool(session.tools, question.tool, question.args);
  return session.trace(file, question.name, question.open);
}

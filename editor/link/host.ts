// The worker's side of the link: one session, asks in, replies out.

import type { Session } from "../../engine/session/index.ts";
import type { Answers, Ask, Question, Reply } from "./protocol.ts";

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
        for (const file of session.files()) if (file !== ask.file) session.remove(file);
        session.put(ask.file, ask.text);
      } else session.edit(ask.file, ask.changes);
      send({ kind: "snapshot", version: ask.version, snapshot: session.snapshot(ask.file) });
    } catch (fault) {
      send({ kind: "broken", version: ask.version, observed: observed(fault) });
    }
  };
}

function answer(session: Session, file: string, question: Question): Answers[keyof Answers] {
  if (question.about === "complete") return session.complete(file, question.offset);
  if (question.about === "hover") return session.hover(file, question.offset);
  return session.trace(file, question.name, question.open);
}

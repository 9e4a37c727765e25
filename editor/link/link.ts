// The page's side of the link: sends the text and its changes, joins changes while the worker is busy, and starts the worker
// again when it does not answer in time. The text itself is never at stake: it lives in the editor, the worker has a copy.

import { type ChangeDesc, ChangeSet, type Text } from "@codemirror/state";
import type { TextChange } from "../../engine/base/index.ts";
import type { Snapshot } from "../../engine/session/index.ts";
import type { Answers, Ask, Beside, Question, Reply, WorkerPort } from "./protocol.ts";

/** `stopped`: the last change asked for more work than the pad allows; the next change starts afresh. */
export type LinkState = "starting" | "idle" | "busy" | "stopped" | "broken";

export interface LinkOptions {
  readonly startWorker: () => WorkerPort;
  /** `since`: what changed in the editor's text after the text that the snapshot speaks of; absent when nothing did. */
  readonly onSnapshot: (snapshot: Snapshot, since: ChangeDesc | undefined, whole: boolean) => void;
  readonly onState: (state: LinkState, observed?: string) => void;
  /** Milliseconds an edit and a whole text may take before the worker is started again. */
  readonly editBudget?: number;
  readonly openBudget?: number;
}

export interface EngineLink {
  /** `beside`: the other files of its folder, by which \`use\` lines are resolved. */
  open(file: string, text: Text, beside?: readonly Beside[]): void;
  /** Other files of the folder came, changed or (without a text) went. */
  beside(files: readonly Beside[]): void;
  /** To be called for every change of the editor's text, in order, with the text after it. */
  edit(changes: ChangeSet, after: Text): void;
  /** Answers about the text as it is now; undefined when the text changed meanwhile or the worker is not to be had. */
  ask<K extends Question["about"]>(question: Extract<Question, { about: K }>): Promise<Answers[K] | undefined>;
  /** Asks for the outputs again without a change of the text: the view has changed. */
  refresh(): void;
  /** Resolves when every change so far is answered. */
  settled(): Promise<void>;
  close(): void;
}

interface Sent {
  readonly version: number;
  /** Absent for a whole text. */
  readonly changes?: ChangeSet;
}

interface Waiting {
  readonly version: number;
  readonly resolve: (answer: Answers[keyof Answers] | undefined) => void;
}

export function textChanges(changes: ChangeSet): TextChange[] {
  const list: TextChange[] = [];
  changes.iterChanges((from, to, _fromB, _toB, inserted) => list.push({ from, to, insert: inserted.toString() }));
  return list;
}

export function createLink(options: LinkOptions): EngineLink {
  const editBudget = options.editBudget ?? 5_000;
  const openBudget = options.openBudget ?? 30_000;
  let port: WorkerPort | undefined;
  let file = "";
  let text: Text | undefined;
  const others = new Map<string, string>();
  let version = 0;
  let questions = 0;
  let sent: Sent[] = [];
  let pending: ChangeSet | undefined;
  let state: LinkState = "starting";
  let timer: ReturnType<typeof setTimeout> | undefined;
  const waiting = new Map<number, Waiting>();
  let settling: (() => void)[] = [];

  const show = (next: LinkState, observed?: string): void => {
    if (next === state && observed === undefined) return;
    state = next;
    options.onState(next, observed);
  };

  const watch = (): void => {
    clearTimeout(timer);
    timer = undefined;
    const first = sent[0];
    if (first === undefined && waiting.size === 0) return;
    timer = setTimeout(() => giveUp("stopped"), first !== undefined && first.changes === undefined ? openBudget : editBudget);
  };

  /** Ends the worker and forgets what it was asked; the next change sends the whole text to a new one. */
  const giveUp = (why: "stopped" | "broken", observed?: string): void => {
    clearTimeout(timer);
    port?.terminate();
    port = undefined;
    sent = [];
    pending = undefined;
    for (const { resolve } of waiting.values()) resolve(undefined);
    waiting.clear();
    release();
    show(why, observed);
  };

  const release = (): void => {
    const resolve = settling;
    settling = [];
    for (const done of resolve) done();
  };

  const start = (): WorkerPort => {
    const started = options.startWorker();
    started.onmessage = (event) => {
      if (started === port) receive(event.data);
    };
    started.onerror = (event) => {
      if (started === port) giveUp("broken", event.message ?? "the worker ended");
    };
    return started;
  };

  const post = (ask: Ask): void => {
    port ??= start();
    port.postMessage(ask);
  };

  const sendWhole = (): void => {
    if (text === undefined) return;
    version += 1;
    sent = [{ version }];
    pending = undefined;
    const beside = [...others].map(([name, body]): Beside => ({ file: name, text: body }));
    post({ kind: "open", version, file, text: text.toString(), beside });
    show("busy");
    watch();
  };

  /** The open file is never beside itself. */
  const keepOthers = (files: readonly Beside[]): void => {
    for (const { file: name, text: body } of files) {
      if (body === undefined || name === file) others.delete(name);
      else others.set(name, body);
    }
  };

  const flush = (): void => {
    if (pending === undefined) return;
    version += 1;
    const changes = pending;
    pending = undefined;
    sent.push({ version, changes });
    post({ kind: "edit", version, file, changes: textChanges(changes) });
    show("busy");
    if (sent.length === 1) watch();
  };

  const receive = (reply: Reply): void => {
    if (reply.kind === "ready") return;
    const id = reply.kind === "snapshot" ? undefined : reply.id;
    if (id !== undefined) {
      const question = waiting.get(id);
      if (question === undefined) return;
      waiting.delete(id);
      const current = question.version === version && pending === undefined;
      question.resolve(reply.kind === "answer" && current ? reply.answer : undefined);
      watch();
      return;
    }
    if (reply.kind === "broken") {
      giveUp("broken", reply.observed);
      return;
    }
    if (reply.kind === "answer") return;
    const first = sent.find((entry) => entry.version === reply.version);
    if (first === undefined) return;
    sent = sent.filter((entry) => entry.version > reply.version);
    let since: ChangeSet | undefined;
    for (const { changes } of sent) if (changes !== undefined) since = since === undefined ? changes : since.compose(changes);
    if (pending !== undefined) since = since === undefined ? pending : since.compose(pending);
    options.onSnapshot(reply.snapshot, since?.desc, first.changes === undefined);
    if (sent.length === 0) flush();
    if (sent.length === 0) {
      show("idle");
      release();
    }
    watch();
  };

  return {
    open(name, whole, beside = []) {
      file = name;
      text = whole;
      others.clear();
      keepOthers(beside);
      for (const { resolve } of waiting.values()) resolve(undefined);
      waiting.clear();
      sendWhole();
    },
    beside(files) {
      keepOthers(files);
      if (text === undefined) return;
      if (port === undefined) return sendWhole();
      flush();
      version += 1;
      sent.push({ version, changes: ChangeSet.empty(text.length) });
      post({ kind: "beside", version, file, beside: files.filter((other) => other.file !== file) });
      show("busy");
      if (sent.length === 1) watch();
    },
    edit(changes, after) {
      text = after;
      if (port === undefined) return sendWhole();
      pending = pending === undefined ? changes : pending.compose(changes);
      if (sent.length === 0) flush();
    },
    ask(question) {
      if (port === undefined) return Promise.resolve(undefined);
      flush();
      questions += 1;
      const id = questions;
      return new Promise((resolve) => {
        waiting.set(id, { version, resolve: resolve as Waiting["resolve"] });
        post({ kind: "question", id, file, question });
        if (timer === undefined) watch();
      });
    },
    refresh() {
      if (text === undefined || port === undefined) return;
      pending ??= ChangeSet.empty(text.length);
      if (sent.length === 0) flush();
    },
    settled() {
      if (sent.length === 0 && pending === undefined) return Promise.resolve();
      return new Promise((resolve) => settling.push(resolve));
    },
    close() {
      clearTimeout(timer);
      port?.terminate();
      port = undefined;
      sent = [];
      for (const { resolve } of waiting.values()) resolve(undefined);
      waiting.clear();
      release();
    },
  };
}

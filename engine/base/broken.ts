// Faults of our own: an invariant that did not hold. Never used for what a user wrote.

/** Throws with what was observed; the session catches it once per statement and reports an internal fault. */
export function broken(observed: string): never {
  throw new Error(`internal: ${observed}`);
}

export function assertNever(value: never): never {
  return broken(`unexpected case ${JSON.stringify(value)}`);
}

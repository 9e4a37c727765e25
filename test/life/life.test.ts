// After the release: what a change moves, a branch with as-found values, which input would have given what was seen.

import { describe, expect, it } from "vitest";
import { branchOf, reproduce } from "../../engine/life/index.ts";
import { createSession, type Library, type Session } from "../../engine/session/index.ts";

const library: Library = { version: "1", modules: [], files: [], natives: {}, sources: "" };
const FILE = "strap.joint.md";

const text = `---
title: Strap
number: CALC-1
revision: B
status: released
creator: A. Maker
checker: B. Reader
---

\`\`\`calc
w = 12 mm within 8 mm .. 16 mm | width | given drawing 3
t = 2 mm                       | thickness | given drawing 3
d = 3 mm                       | hole | given drawing 3
R = 50 MPa                     | strength | assumed
F_net = R * (w - d) * t
F_pin = 2 * R * d * t
F_ult = min(F_net, F_pin)
F     = 400 N                  | load | given log
check F <= F_net | net section
check F <= F_pin | bearing
\`\`\`
`;

function open(): Session {
  const session = createSession(library);
  session.put(FILE, text);
  return session;
}

describe("which input would have given what was seen", () => {
  it("ranks those that reproduce load and mode by the smallest change", () => {
    // F_pin = 600 N governs as written. 450 N: by the hole 2.25 mm, the thickness 1.5 mm, the strength 37.5 MPa; the width never.
    const found = reproduce(open(), FILE, { result: "F_ult", value: 450, mode: "bearing" }) ?? [];
    expect(found.filter(({ miss }) => miss < 1e-6).map(({ name }) => name)).toEqual(["R", "d", "t"]);
    for (const { change } of found.filter(({ miss }) => miss < 1e-6)) expect(change).toBeCloseTo(-0.25, 9);
    expect(found[0]).toMatchObject({ governs: "bearing", sameMode: true });
  });

  it("an input that gives the load by another mode comes after those that give the mode", () => {
    // 500 N: a width of 8 mm tears the net section, a hole of 2.5 mm crushes at the pin.
    const found = reproduce(open(), FILE, { result: "F_ult", value: 500, mode: "net section" }) ?? [];
    expect(found[0]?.name).toBe("w");
    expect(found[0]?.needed).toBeCloseTo(8, 9);
    expect(found.find(({ name }) => name === "d")?.sameMode).toBe(false);
  });

  it("stays within the bounds of the notebook and says how near it came", () => {
    const found = reproduce(open(), FILE, { result: "F_net", value: 100 }) ?? [];
    const width = found.find(({ name }) => name === "w");
    expect(width?.needed).toBe(8);
    expect(width?.miss).toBeCloseTo(4, 9);
  });

  it("leaves the notebook as it was, and leaves out what moves nothing", () => {
    const session = open();
    const found = reproduce(session, FILE, { result: "F_net", value: 700 }) ?? [];
    expect(session.text(FILE)).toBe(text);
    expect(found.map(({ name }) => name)).not.toContain("F");
  });

  it("needs a result with one number", () => {
    expect(reproduce(open(), FILE, { result: "nothing", value: 1 })).toBeUndefined();
  });
});

describe("a branch for a failure in the field", () => {
  const branch = branchOf(
    library,
    [{ name: FILE, text }],
    FILE,
    [
      { name: "w", value: 11.6 },
      { name: "t", value: 1.8 },
      { name: "F_net", value: 1 },
    ],
    {
      number: "CALC-1 B",
      digest: "ab12",
    },
  );

  it("puts in what was found, in the unit of the notebook, and says what is no input", () => {
    expect(branch.text).toContain("w = 11.6 mm within 8 mm .. 16 mm");
    expect(branch.text).toContain("t = 1.8 mm ");
    expect(branch.unknown).toEqual(["F_net"]);
  });

  it("is a new document in preparation that names where it comes from, with nobody's signature", () => {
    expect(branch.text).toContain("status: in preparation");
    expect(branch.text).toContain("branch_of: CALC-1 B sha256 ab12");
    expect(branch.text).not.toMatch(/^(number|revision|checker):/m);
    const session = createSession(library);
    session.put(FILE, branch.text);
    expect(session.outputs(FILE).flatMap(({ diagnostics }) => diagnostics)).toEqual([]);
  });
});

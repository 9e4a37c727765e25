// A notebook of any length for the bench: blocks of ten statements with prose, live values and references. Numbers invented.

/** `count` statements, in blocks of ten that hang on the block before. */
export function bigNotebook(count: number): string {
  const lines = ["---", "title: A long notebook (invented)", "units: { length: mm, force: N, stress: MPa }", "---", "", "# Joints", ""];
  for (let b = 0; b < count / 10; b += 1) {
    lines.push(
      "",
      `## Joint ${b}`,
      "",
      `The insert of joint ${b} carries {F_${b}}.`,
      "",
      "```calc",
      `d_${b} = ${3 + (b % 7)} mm within 2 mm .. 20 mm   | diameter of the insert | given drawing ${b}`,
      `L_${b} = ${8 + (b % 5)} mm   | engagement | given drawing ${b}`,
      `tau_${b} = 17 MPa   | shear strength | test own`,
      `A_${b} = pi * d_${b} * L_${b}  as mm^2   | cylinder`,
      `F_${b} = tau_${b} * A_${b}   | load at which it strips`,
      `W_${b} = 42 N   | load | assumed`,
      `k_${b} = 2.0`,
      `D_${b} = k_${b} * W_${b} + ${b === 0 ? "0 N" : `0.001 * W_${b - 1}`}`,
      `U_${b} = D_${b} / F_${b}`,
      `check D_${b} <= F_${b} factor 1.5   | strip ${b}`,
      "```",
    );
  }
  return `${lines.join("\n")}\n`;
}

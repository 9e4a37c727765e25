// The cautions of the trade, as the start page and the help page give them.

export const cautions: readonly string[] = [
  "A result here is an aid to judgement. Lifting, life-safety and regulated work needs the local codes and a licensed engineer.",
  "Printed parts differ from print to print: strength across layers, moisture and temperature change it. Test your own specimens.",
  "Polymers creep. A joint that holds today may loosen under a load that lasts; check preload again after time and heat.",
  "Pull and torque tests store energy: guard them, wear eye protection, stand out of the line of the screw.",
  "Setting inserts and post-processing use hot tools: mind the tip, the part and the fumes.",
  "Cut or drilled fibre-reinforced parts give splinters and dust: gloves, mask, extraction.",
];

// Colours of roles: for light paper, for dark, for print in black and one colour a meaning.

import type { Role } from "./scene.ts";

export type Palette = Readonly<Record<Role, string>>;

/** Every text role reads at 4.5 to 1 or better on its paper; a test computes it. */
export const lightPalette: Palette = {
  ink: "#1d2430",
  soft: "#5b6472",
  paper: "#fbfaf6",
  metal: "#3c4656",
  printed: "#23528f",
  infill: "#8aa6c9",
  layer: "#6f92bf",
  insert: "#7d5b00",
  fibre: "#5a3a86",
  load: "#b0341c",
  failure: "#b0341c",
  dimension: "#1d2430",
  leader: "#5b6472",
  centre: "#5b6472",
  axis: "#3c4656",
  grid: "#e1e0d8",
  holds: "#1d6a52",
  open: "#7d5b00",
  series1: "#23528f",
  series2: "#b0341c",
  series3: "#1d6a52",
  series4: "#7d5b00",
  series5: "#5a3a86",
  series6: "#3c4656",
};

export const darkPalette: Palette = {
  ink: "#e4e7ec",
  soft: "#a5afbd",
  paper: "#171b21",
  metal: "#c3cad4",
  printed: "#8fb8ef",
  infill: "#4c678c",
  layer: "#6688b5",
  insert: "#dcb35c",
  fibre: "#c3a6ee",
  load: "#f2826b",
  failure: "#f2826b",
  dimension: "#e4e7ec",
  leader: "#a5afbd",
  centre: "#a5afbd",
  axis: "#c3cad4",
  grid: "#2b323c",
  holds: "#6cc7a6",
  open: "#dcb35c",
  series1: "#8fb8ef",
  series2: "#f2826b",
  series3: "#6cc7a6",
  series4: "#dcb35c",
  series5: "#c3a6ee",
  series6: "#c3cad4",
};

/** White paper, for what is printed: the same inks on a ground that costs none. */
export const printPalette: Palette = { ...lightPalette, paper: "#ffffff", grid: "#dcdcd6" };

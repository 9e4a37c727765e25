// Our own short style: what stands in the reference column, and the full entry of the reference list.

import type { Author, Reference } from "./reference.ts";

/** Longest title that stands for a work in the narrow column. */
const SHORT_TITLE = 36;

/**
 * What names the work in the reference column: a standard's or report's number, else author and year, else its title cut
 * at a word, else its key. E.g. `ISO 965-1`, `Kennedy 2009`, `Alder and Birch 2020`, `Alder et al. 2021`.
 */
export function shortCitation(reference: Reference): string {
  if (reference.number !== "") return reference.number;
  const names = shortNames(reference.authors);
  if (names !== "") return reference.year === "" ? names : `${names} ${reference.year}`;
  return reference.title === "" ? reference.id : shortTitle(reference.title);
}

/**
 * The entry of the reference list, one sentence a fact:
 * `ISO 965-1: ISO general purpose metric screw threads, tolerances.` or
 * `A. Kennedy: Types for units of measure. Lecture notes 6299, p. 268-305. Publisher, 2009. doi:10.1007/…`
 */
export function formatReference(reference: Reference): string {
  const { number, title, container, volume, issue, page, edition, version, publisher, year, doi, url, note } = reference;
  const who = [fullNames(reference.authors), number].filter((text) => text !== "").join(", ");
  const lead = [who, title].filter((text) => text !== "").join(": ") || reference.id;
  const inside = [`${container} ${volume}${issue === "" ? "" : `(${issue})`}`.trim(), page === "" ? "" : `p. ${page}`];
  const issued = [edition === "" ? "" : ordinalEdition(edition), version === "" ? "" : `version ${version}`, publisher, year];
  const where = doi === "" ? url : `doi:${doi}`;
  const sentences = [lead, joined(inside), joined(issued), note].filter((text) => text !== "").map(sentence);
  return [...sentences, ...(where === "" ? [] : [where])].join(" ");
}

const joined = (texts: readonly string[]): string => texts.filter((text) => text !== "").join(", ");

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

const ordinalEdition = (edition: string): string => (/^\d+$/.test(edition) ? `edition ${edition}` : edition);

function shortNames(authors: readonly Author[]): string {
  const [first, second] = authors;
  if (first === undefined) return "";
  if (second === undefined) return first.family;
  return authors.length === 2 ? `${first.family} and ${second.family}` : `${first.family} et al.`;
}

const fullNames = (authors: readonly Author[]): string => joined(authors.map(({ family, given }) => `${initials(given)}${family}`));

/** `Andrew John` becomes `A. J. `; what is written as initials stays. */
const initials = (given: string): string =>
  given
    .split(/[\s.]+/)
    .filter((name) => name !== "")
    .map((name) => `${[...name][0]}. `)
    .join("");

function shortTitle(title: string): string {
  if (title.length <= SHORT_TITLE) return title;
  const cut = title.lastIndexOf(" ", SHORT_TITLE);
  return `${title.slice(0, cut > 12 ? cut : SHORT_TITLE).replace(/[\s,;:(]+$/, "")}…`;
}

// Light, dark, or what the system says.

import { useEffect, useState } from "preact/hooks";

type Choice = "system" | "light" | "dark";

const KEY = "jointwright-theme";
const NEXT: Readonly<Record<Choice, Choice>> = { system: "light", light: "dark", dark: "system" };

function remembered(): Choice {
  try {
    const value = localStorage.getItem(KEY);
    return value === "light" || value === "dark" ? value : "system";
  } catch {
    return "system";
  }
}

function apply(choice: Choice): void {
  if (choice === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = choice;
  try {
    localStorage.setItem(KEY, choice);
  } catch {
    // Storage is off: the choice lasts as long as the page.
  }
}

export function ThemeButton() {
  const [choice, setChoice] = useState<Choice>(remembered);
  useEffect(() => apply(choice), [choice]);
  return (
    <button type="button" class="plain" onClick={() => setChoice(NEXT[choice])} title={`Colours: ${choice}`}>
      <span aria-hidden="true" class="shape">
        {choice === "dark" ? "■" : choice === "light" ? "□" : "◆"}
      </span>
      {choice === "system" ? "Auto" : choice === "dark" ? "Dark" : "Light"}
    </button>
  );
}

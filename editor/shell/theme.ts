// Light, dark, or what the system says; remembered in the browser.

export type Theme = "system" | "light" | "dark";

const KEY = "jointwright-theme";
const NEXT: Readonly<Record<Theme, Theme>> = { system: "light", light: "dark", dark: "system" };

export const themeWords: Readonly<Record<Theme, string>> = { system: "colours as the system says", light: "light", dark: "dark" };

export function rememberedTheme(): Theme {
  try {
    const value = localStorage.getItem(KEY);
    return value === "light" || value === "dark" ? value : "system";
  } catch {
    return "system";
  }
}

export function applyTheme(theme: Theme): void {
  if (theme === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    // Storage is off: the choice lasts as long as the page.
  }
}

export const themeAfter = (theme: Theme): Theme => NEXT[theme];

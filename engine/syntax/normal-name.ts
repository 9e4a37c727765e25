// The one form of a name: NFC, a Greek letter that is a whole `_` segment spelled in English.

const GREEK: ReadonlyMap<string, string> = new Map(
  Object.entries({
    α: "alpha",
    β: "beta",
    γ: "gamma",
    δ: "delta",
    ε: "epsilon",
    ϵ: "epsilon",
    ζ: "zeta",
    η: "eta",
    θ: "theta",
    ϑ: "theta",
    ι: "iota",
    κ: "kappa",
    λ: "lambda",
    μ: "mu",
    µ: "mu",
    ν: "nu",
    ξ: "xi",
    ο: "omicron",
    π: "pi",
    ρ: "rho",
    σ: "sigma",
    ς: "sigma",
    τ: "tau",
    υ: "upsilon",
    φ: "phi",
    ϕ: "phi",
    χ: "chi",
    ψ: "psi",
    ω: "omega",
    Α: "Alpha",
    Β: "Beta",
    Γ: "Gamma",
    Δ: "Delta",
    Ε: "Epsilon",
    Ζ: "Zeta",
    Η: "Eta",
    Θ: "Theta",
    Ι: "Iota",
    Κ: "Kappa",
    Λ: "Lambda",
    Μ: "Mu",
    Ν: "Nu",
    Ξ: "Xi",
    Ο: "Omicron",
    Π: "Pi",
    Ρ: "Rho",
    Σ: "Sigma",
    Τ: "Tau",
    Υ: "Upsilon",
    Φ: "Phi",
    Χ: "Chi",
    Ψ: "Psi",
    Ω: "Omega",
  }),
);

const ASCII = /^[\x20-\x7e]*$/;

/** `τ_max` and `tau_max` are one name, `tau_max`; `Δ_T` is `Delta_T`; `ΔT` stays as it is. */
export function normalName(text: string): string {
  if (ASCII.test(text)) return text;
  return text
    .normalize("NFC")
    .split("_")
    .map((segment) => GREEK.get(segment) ?? segment)
    .join("_");
}

const SIGNS: ReadonlyMap<string, string> = new Map([...GREEK].reverse().map(([sign, name]) => [name, sign]));

/** The Greek letter that a name spells, `τ` for `tau`; undefined when it spells none. */
export const greekSign = (name: string): string | undefined => (name === "mu" ? "μ" : SIGNS.get(name));

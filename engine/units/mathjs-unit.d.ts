// Types of the one mathjs module that engine/units reads; the package ships none for it.

declare module "*/mathjs/lib/esm/type/unit/Unit.js" {
  export function createUnitClass(wiring: Readonly<Record<string, unknown>>): {
    readonly UNITS: Readonly<Record<string, { readonly value: unknown; readonly dimensions: readonly number[] }>>;
  };
}

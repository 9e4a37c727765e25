// Types of what the tests use of the UCUM reference implementation; the package ships none.

declare module "@lhncbc/ucum-lhc" {
  interface Utils {
    convertToBaseUnits(
      code: string,
      value: number,
    ): {
      readonly status: string;
      readonly msg: readonly string[];
      readonly magnitude: number;
      readonly unitToExp: Readonly<Record<string, number>>;
    };
    convertUnitTo(from: string, value: number, to: string): { readonly status: string; readonly toVal: number };
    validateUnitString(code: string): { readonly status: string };
  }
  const pkg: { readonly UcumLhcUtils: { getInstance(): Utils } };
  export default pkg;
}

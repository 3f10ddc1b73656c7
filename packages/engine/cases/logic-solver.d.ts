/** The few names of logic-solver 2.0.1 that the tests use; the package has no types of its own. */
declare module 'logic-solver' {
  type Operand = string | object
  interface Solution {
    getTrueVars(): string[]
  }
  class Solver {
    require(...formulas: readonly Operand[]): void
    forbid(...formulas: readonly Operand[]): void
    solve(): Solution | null
    solveAssuming(formula: Operand): Solution | null
  }
  const Logic: {
    // biome-ignore lint/style/useNamingConvention: the package's own name
    readonly Solver: typeof Solver
    and(...operands: readonly Operand[]): Operand
    or(...operands: readonly Operand[]): Operand
    not(operand: Operand): Operand
    exactlyOne(...operands: readonly Operand[]): Operand
  }
  export default Logic
}

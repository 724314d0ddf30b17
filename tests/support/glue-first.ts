// A plan with a rule of order of its own, for tests of what holds an order: its steps come below.
export const GLUE_FIRST = `plan p
  start 2027-04-05
trade crew crew of 2
trade others crew of 2
work glue "Glue"
work clamp "Clamp"
rule glue-first "Clamped before glued"
  first glue
  then clamp
  severity error
  because "It falls apart."
`;

// HiGHS (MIT), a solver for linear models in whole numbers, compiled to WebAssembly: loaded only when a proof is asked for. It
// lies beside the command line as files of its own, so that nothing else pays for it.
import type { Solve } from '#answers/layout/proofs';

type Highs = Awaited<ReturnType<typeof import('highs')['default']>>;

export async function loaded(): Promise<Highs> {
  // Not by a line at the top: a bundle would load it with every command.
  const { default: load } = await import('highs');
  return load();
}

export async function loadSolver(): Promise<Solve> {
  const highs = await loaded();
  return (model, seconds) => {
    const { Status, ObjectiveValue, Columns, Rows } = highs.solve(model, {
      output_flag: false,
      mip_rel_gap: 0,
      time_limit: seconds,
    });
    const values = Object.entries(Columns).map(
      ([name, column]) => [name, 'Primal' in column ? column.Primal : Number.NaN] as const,
    );
    if (!Number.isFinite(ObjectiveValue) || values.some(([, value]) => !Number.isFinite(value))) return undefined;
    if (Status !== 'Optimal' && Status !== 'Time limit reached') return undefined;
    const duals = Rows.flatMap((row) => ('Dual' in row ? [[row.Name, row.Dual] as const] : []));
    return { optimal: Status === 'Optimal', value: ObjectiveValue, values: new Map(values), duals: new Map(duals) };
  };
}

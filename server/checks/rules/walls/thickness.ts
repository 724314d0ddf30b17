// Assemblies whose layers do not add up to the thickness that they are drawn at.
import { type Finding, finding, findingSort } from '#kit/finding';
import { assemblyFigures } from '#takeoff/assembly';
import { airFilms } from '#takeoff/conventions';
import type { Check } from '../../check.ts';
import { lengthText, namesText } from '../../show.ts';

export const unequal = findingSort<[assembly: string, layers: string, drawn: string, without: string]>({
  code: 'walls/thickness',
  severity: 'warning',
  say: (assembly, layers, drawn, without) =>
    `The layers of "${assembly}" add up to ${layers}${without === '' ? '' : `, with ${without} not known`}, and it is drawn ${drawn} thick: jambs, sills and trim ordered for the one do not fit the other. Look which layer is missing or of another size, or draw it as it is built.`,
});

export const thickness: Check = {
  code: 'walls/thickness',
  about:
    'Where an assembly says how thick it is drawn, its layers must add up to that; where a layer does not tell its thickness, to no more than that.',
  wrong: `assembly inside "Inside wall" for partition
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"
  thick 4 3/4"
`,
  right: `assembly inside "Inside wall" for partition
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"
  thick 4 1/2"
`,
  reads: ({ model }) => [model.list('assembly'), model.settings],
  run: ({ model }) =>
    model.list('assembly').flatMap((assembly): readonly Finding[] => {
      const drawn = assembly.given.thick;
      if (drawn === undefined) return [];
      const { thickness: layers, unknown } = assemblyFigures(assembly, airFilms(model));
      const closes = unknown.thickness.length === 0 ? layers.value === drawn.value.value : layers.value <= drawn.value.value;
      if (closes) return [];
      const without = unknown.thickness.length === 0 ? '' : namesText([...new Set(unknown.thickness)]);
      const [sum, said] = [lengthText(layers.value, model), lengthText(drawn.value.value, model)];
      return [finding(unequal, drawn.place, assembly.label, sum, said, without)];
    }),
};

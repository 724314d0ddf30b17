// `screed faster`: which steps are worth paying to shorten, and the least price for each earlier end.
import { fasterOf, shortened, shortenedText } from '#answers/faster';
import { fasterAnswer } from '#answers/faster-json';
import { aloneTable, endsTable } from '#answers/faster-table';
import { type Cell, writeCsv } from '#kit/table';
import { readPlan } from './input.ts';
import { type Common, chosenFormat, drawTable, emit, jsonText } from './output.ts';

const FORMATS = ['table', 'json', 'csv'] as const;

export function faster(path: string, options: Common): number {
  const format = chosenFormat(options, FORMATS);
  const view = readPlan(path, options.asOf);
  const found = fasterOf(view);
  switch (format) {
    case 'table': {
      const tables = [aloneTable(found, view), endsTable(found, view)].map((table) => drawTable(table, options.quiet));
      emit(tables.filter((text) => text !== '').join('\n'), options);
      break;
    }
    case 'json':
      emit(jsonText(fasterAnswer(found, view)), options);
      break;
    case 'csv':
      emit(
        writeCsv([
          ['finish', 'days sooner', 'cents', 'cents for a day', 'shorter'],
          ...fasterAnswer(found, view).ends.map((end, nth): readonly Cell[] => [
            end.finish,
            end.days,
            end.cents,
            end.centsPerDay,
            shortenedText(shortened(found.ends[nth]!.taken, found), found, view),
          ]),
        ]),
        options,
      );
      break;
  }
  return 0;
}

// Published projects of three-point lengths as plans: rows of name, least, likely, most and what it follows; one unit of the
// book is a working day here, and every day of the week is worked.
import type { View } from '#answers/view';
import { viewText } from '#tests/server/answers/plans';

/** `A 1 2 3`, `C 1 2 3 after a, b`; one row a line or apart by semicolons. */
export function threePointPlan(rows: string, more = ''): View {
  const tasks = rows
    .trim()
    .split(/\s*[;\n]\s*/)
    .map((row) => {
      const [, name, least, likely, most, after] = /^(\S+) ([\d.]+) ([\d.]+) ([\d.]+)(?: after (.*))?$/.exec(row.trim())!;
      return `task ${name} takes ${least}d..${most}d likely ${likely}d${after === undefined ? '' : ` after ${after}`}`;
    });
  return viewText(['plan p', '  start 2027-01-04', '  workweek mon-sun 8h', more, ...tasks].join('\n'));
}

/** Heizer and Render, "Operations Management", ch. Project Management: Milwaukee Paper, in weeks. */
export const MILWAUKEE = `A 1 2 3; B 2 3 4; C 1 2 3 after A; D 2 4 6 after A, B; E 1 4 7 after C; F 1 2 9 after C
  G 3 4 11 after D, E; H 1 2 3 after F, G`;
/** Hillier and Lieberman, "Introduction to Operations Research", ch. PERT/CPM: Reliable Construction Co.; three points from memory. */
export const RELIABLE = `A 1 2 3; B 2 3.5 8 after A; C 6 9 18 after B; D 4 5.5 10 after C; E 1 4.5 5 after C; F 4 4 10 after E
  G 5 6.5 11 after D; H 5 8 17 after E, G; I 3 7.5 9 after C; J 3 9 9 after F, I; K 4 4 4 after J; L 1 5.5 7 after J
  M 1 2 3 after H; N 5 5.5 9 after K, L`;
/** Anderson, Sweeney and Williams, "An Introduction to Management Science", ch. Project Scheduling: Porta-Vac, in weeks. */
export const PORTA_VAC = `A 4 5 12; B 1 1.5 5; C 2 3 4 after A; D 3 4 11 after A; E 2 3 4 after A; F 1.5 2 2.5 after C
  G 1.5 3 4.5 after D; H 2.5 3.5 7.5 after B, E; I 1.5 2 2.5 after H; J 1 2 3 after F, G, I`;
/** Stevenson, "Operations Management", ch. 17, an advertising campaign, in weeks. */
export const ADVERTISING = `A 5 6 7; B 8 8 11; C 6 8 11 after A; D 9 12 15; E 5 6 9 after C; F 5 6 7 after D; G 2 3 7 after F
  H 4 4 5 after B; I 5 7 8 after H`;
/** Fourteen activities, a course exercise (wizedu.com, question 717873), in weeks. */
export const FOURTEEN = `A 5 5 7; B 1 2 5; C 5 5 5 after A; D 4 8 13 after A; E 1 10 17 after B, C; F 1 5 7 after D; G 2 6 9 after D
  H 4 4 6 after E, F; I 2 7 10 after G, H; J 2 4 7 after I; K 6 10 13 after I; L 2 6 6 after J; M 2 2 3 after K; N 7 7 12 after L, M`;

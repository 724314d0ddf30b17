// Networks with published answers: early and late dates, total and free float. All were recomputed by hand; where a
// column is not in the source, or the source is at fault, the test says so.
import { expect, test } from 'vitest';
import { checkNetworkTable, criticalNames } from '#tests/support/network-table';

test('Hendrickson, Project Management for Construction, ch. 10, nine activities (MIT 1.204 problem set 5, 2010); free float computed', () => {
  const { path, table } = checkNetworkTable(
    `
    A 4  | –    | 0 4 0 4 0 0
    B 3  | –    | 0 3 9 12 9 9
    C 8  | A    | 4 12 4 12 0 0
    D 7  | A    | 4 11 15 22 11 10
    E 9  | B, C | 12 21 13 22 1 0
    F 12 | B, C | 12 24 12 24 0 0
    G 2  | D, E | 21 23 22 24 1 1
    H 5  | D, E | 21 26 25 30 4 4
    I 6  | F, G | 24 30 24 30 0 0`,
    30,
  );
  expect(criticalNames(path, table.names)).toBe('A C F I');
});

test('Makhorin, GNU MathProg example "Critical Path Problem" (cpp.mod), a house: the optimal solution is 46; floats computed', () => {
  const { path, table } = checkNetworkTable(
    `
    A 3  | –          | 0 3 0 3 0 0
    B 4  | A          | 3 7 3 7 0 0
    C 3  | B          | 7 10 22 25 15 15
    D 10 | B          | 7 17 7 17 0 0
    E 8  | D          | 17 25 17 25 0 0
    F 4  | D          | 17 21 21 25 4 4
    G 6  | D          | 17 23 19 25 2 2
    H 8  | C, E, F, G | 25 33 25 33 0 0
    I 5  | H          | 33 38 33 38 0 0
    J 5  | H          | 33 38 35 40 2 0
    K 4  | I          | 38 42 38 42 0 0
    L 2  | J          | 38 40 40 42 2 2
    M 4  | K, L       | 42 46 42 46 0 0`,
    46,
  );
  expect(criticalNames(path, table.names)).toBe('A B D E H I K M');
});

test('Taylor, Introduction to Management Science, ch. 8, problem 5 (solution manual); free float computed', () => {
  const { path, table } = checkNetworkTable(
    `
    1-2 7  | –        | 0 7 2 9 2 0
    1-3 10 | –        | 0 10 0 10 0 0
    2-4 6  | 1-2      | 7 13 9 15 2 2
    3-4 5  | 1-3      | 10 15 10 15 0 0
    3-5 4  | 1-3      | 10 14 14 18 4 4
    4-5 3  | 2-4, 3-4 | 15 18 15 18 0 0
    5-6 2  | 3-5, 4-5 | 18 20 18 20 0 0`,
    20,
  );
  expect(criticalNames(path, table.names)).toBe('1-3 3-4 4-5 5-6');
});

test('Taylor, Introduction to Management Science, ch. 8, problem 6 (solution manual), with a dummy 4-5; free float computed', () => {
  const { path, table } = checkNetworkTable(
    `
    1-2 8  | –             | 0 8 1 9 1 0
    1-3 10 | –             | 0 10 0 10 0 0
    1-4 9  | –             | 0 9 6 15 6 0
    2-5 6  | 1-2           | 8 14 9 15 1 1
    2-6 4  | 1-2           | 8 12 16 20 8 0
    3-5 5  | 1-3           | 10 15 10 15 0 0
    4-5 0  | 1-4           | 9 9 15 15 6 6
    4-7 7  | 1-4           | 9 16 20 27 11 11
    5-7 12 | 2-5, 3-5, 4-5 | 15 27 15 27 0 0
    5-8 15 | 2-5, 3-5, 4-5 | 15 30 16 31 1 1
    6-9 18 | 2-6           | 12 30 20 38 8 8
    7-8 4  | 4-7, 5-7      | 27 31 27 31 0 0
    8-9 7  | 5-8, 7-8      | 31 38 31 38 0 0`,
    38,
  );
  expect(criticalNames(path, table.names)).toBe('1-3 3-5 5-7 7-8 8-9');
});

test('"Network Construction – Critical Path Method" (course note, author not named), 14 activities: paths 35, 41, 30, 39, 38; table computed', () => {
  const { path, table } = checkNetworkTable(
    `
    A 2  | –       | 0 2 0 2 0 0
    B 10 | A       | 2 12 2 12 0 0
    C 13 | A       | 2 15 13 26 11 9
    D 12 | A       | 2 14 4 16 2 0
    E 12 | B       | 12 24 18 30 6 6
    F 7  | B       | 12 19 12 19 0 0
    G 10 | D       | 14 24 16 26 2 0
    H 16 | D       | 14 30 17 33 3 0
    I 6  | F       | 19 25 19 25 0 0
    J 12 | C, G    | 24 36 26 38 2 2
    K 5  | I       | 25 30 25 30 0 0
    L 8  | E, K    | 30 38 30 38 0 0
    M 5  | H       | 30 35 33 38 3 3
    N 3  | J, L, M | 38 41 38 41 0 0`,
    41,
  );
  expect(criticalNames(path, table.names)).toBe('A B F I K L N');
});

test('"Network Construction – Precedence Diagram Method" (course note, 15 March 2019), start-to-start links; inputs published, times computed', () => {
  const { path, table } = checkNetworkTable(
    `
    A 2  | –          | 0 2 0 2 0 0
    B 10 | A SS       | 0 10 4 14 4 0
    C 13 | A          | 2 15 10 23 8 0
    D 12 | A          | 2 14 2 14 0 0
    E 12 | B          | 10 22 15 27 5 1
    F 7  | B          | 10 17 14 21 4 0
    G 10 | D          | 14 24 23 33 9 1
    H 16 | D          | 14 30 14 30 0 0
    I 6  | F          | 17 23 21 27 4 0
    J 12 | C, G SS    | 15 27 23 35 8 8
    K 5  | I SS       | 17 22 22 27 5 1
    L 8  | E, I, K    | 23 31 27 35 4 4
    M 5  | H          | 30 35 30 35 0 0
    N 3  | G, J, L, M | 35 38 35 38 0 0`,
    38,
  );
  expect(criticalNames(path, table.names)).toBe('A D H M N');
});

test('Mubarak, Construction Project Scheduling and Control, a ladder of start-to-start and finish-to-finish links; late dates computed', () => {
  // Work is not split: the finish-to-finish link moves C as a whole. "ES −2" from a longer successor never counts.
  checkNetworkTable(
    `
    A 5 | –          | 0 5 0 5 0
    B 7 | A SS, A FF | 0 7 0 7 0
    C 3 | B SS, B FF | 4 7 4 7 0`,
    7,
  );
});

test('An exercise with all four kinds of link, leads and lags (posted on askfilo.com); times computed', () => {
  // The posted solution is right up to E and H but lets F start on 18; with "H FF+3" F ends on 25 or later, so on 19.
  const { path, table } = checkNetworkTable(
    `
    B 7  | –                | 0 7 0 7 0 0
    A 11 | B SS             | 0 11 0 11 0 0
    C 4  | A                | 11 15 11 15 0 0
    D 3  | C SS             | 11 14 14 17 3 0
    E 4  | B, D SS-1        | 10 14 29 33 19 0
    H 7  | C                | 15 22 15 22 0 0
    F 6  | D FS+2, H FF+3   | 19 25 19 25 0 0
    G 9  | E, F SF-2        | 14 23 33 42 19 19
    I 3  | F                | 25 28 25 28 0 0
    K 12 | I FS+2           | 30 42 30 42 0 0
    J 4  | I, K FF-3        | 35 39 38 42 3 3`,
    42,
  );
  expect(criticalNames(path, table.names)).toBe('B A C H F I K');
});

test('Hillier & Lieberman, Introduction to Operations Research, PERT/CPM chapter: Reliable Construction Co., 44 weeks (predecessors from memory)', () => {
  const { path, table } = checkNetworkTable(
    `
    A 2  | –    | 0 2 0 2 0 0
    B 4  | A    | 2 6 2 6 0 0
    C 10 | B    | 6 16 6 16 0 0
    D 6  | C    | 16 22 20 26 4 0
    E 4  | C    | 16 20 16 20 0 0
    F 5  | E    | 20 25 20 25 0 0
    G 7  | D    | 22 29 26 33 4 0
    H 9  | E, G | 29 38 33 42 4 0
    I 7  | C    | 16 23 18 25 2 2
    J 8  | F, I | 25 33 25 33 0 0
    K 4  | J    | 33 37 34 38 1 1
    L 5  | J    | 33 38 33 38 0 0
    M 2  | H    | 38 40 42 44 4 4
    N 6  | K, L | 38 44 38 44 0 0`,
    44,
  );
  expect(criticalNames(path, table.names)).toBe('A B C E F J L N');
});

// The end of the big plan: what follows the last cottage, filled up with small things left to put right.

/** At least what is needed; where `lines` asks for more, punch items make up the number. */
export function closing(houses: number, lines: number): readonly string[] {
  const names = Array.from({ length: houses }, (_, index) => `c${String(index + 1).padStart(2, '0')}`);
  const last = [
    '# ---- the end ----',
    '',
    'phase finals "Finals" in order',
    `  task grade         does final-grade by excavation after ${names.map((name) => `${name}-done`).join(', ')}`,
    '  task grass         does seed by me',
    '  inspection building-final by city, call 2 days ahead',
    '  task clean         does final-clean by cleaning',
    '  milestone co       "Certificates of occupancy", to the end',
    '',
  ];
  const rooms = ['bath', 'kitchen', 'hall', 'bed-1', 'bed-2', 'living'];
  for (let count = 0; last.length < lines; count++) {
    last.push(`punch "Small thing ${count + 1}" in ${names[count % houses]}-${rooms[count % rooms.length]} by trim`);
  }
  return last;
}

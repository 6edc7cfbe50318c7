import { describe, expect, it } from 'vitest';
import { tableOf } from '../fixture/read-rows.ts';
import type { Mapping } from '../mapping/mapping.ts';
import { TableProblem } from '../table-problem.ts';
import { jobPlan } from './job-plan.ts';
import { runPlan } from './run-plan.ts';
import { tableHead } from './table-head.ts';

/** What columns are taken for, with twelve rows of these cells below the headings. */
function planOf(headings: string[], cells: string[], mapping: Mapping = {}) {
  const rows = Array.from({ length: 12 }, (_, index) =>
    cells.map((cell) => (cell === '#' ? String(index + 1) : cell === '*' ? `name ${index % 3}` : cell)),
  );
  const plan = jobPlan(tableHead(tableOf([headings, ...rows]), 'jobs'), mapping);
  return {
    ...plan,
    named: Object.fromEntries(Object.entries(plan.places).map(([column, place]) => [column, place.heading])),
  };
}

const DATE = '2026-03-04 09:15';

describe('Columns of a list of requests', () => {
  it.each([
    ['English', ['Order No', 'Received on', 'Part name', 'Qty', 'Technology', 'Due date', 'Completed']],
    [
      'German',
      [
        'Auftragsnr.',
        'Eingangsdatum',
        'Bauteil',
        'Stückzahl',
        'Druckverfahren',
        'Wunschtermin',
        'Fertiggestellt am',
      ],
    ],
    [
      'French',
      ['N° de commande', 'Date de demande', 'Pièce', 'Quantité', 'Procédé', 'Échéance', 'Terminé le'],
    ],
    [
      'Spanish',
      ['Número de pedido', 'Fecha de solicitud', 'Pieza', 'Cantidad', 'Proceso', 'Fecha límite', 'Terminado'],
    ],
    ['Portuguese', ['Número', 'Data do pedido', 'Peça', 'Quantidade', 'Processo', 'Prazo', 'Concluído em']],
    [
      'Italian',
      ['Numero ordine', 'Data richiesta', 'Pezzo', 'Quantità', 'Processo', 'Scadenza', 'Completato il'],
    ],
  ])('are known by their headings in %s', (_, headings) => {
    const { named } = planOf(headings, ['#', DATE, '*', '3', 'resin', '2026-03-09', DATE]);
    expect(Object.values(named).toSorted()).toEqual(headings.toSorted());
    expect(Object.keys(named).toSorted()).toEqual([
      'asked',
      'finished',
      'job',
      'part',
      'process',
      'promised',
      'quantity',
    ]);
  });

  it('are told apart by what is in them where the heading is not enough', () => {
    const { named } = planOf(
      ['Date', 'Part count', 'Part', 'Number', 'Material'],
      [DATE, '3', '*', 'X-1', 'PA12'],
    );
    expect(named).toEqual({
      asked: 'Date',
      quantity: 'Part count',
      part: 'Part',
      job: 'Number',
      material: 'Material',
    });
  });

  it('are guessed from what is in them where headings say nothing', () => {
    const { places } = planOf(['A', 'B', 'C'], [DATE, '*', '7']);
    expect(places.asked).toMatchObject({ heading: 'A', by: 'content' });
    expect(places.part).toMatchObject({ heading: 'B', by: 'content' });
  });

  it('may hold nothing yet', () => {
    expect(planOf(['Asked', 'Part', 'Finished'], [DATE, '*', '']).named.finished).toBe('Finished');
  });

  it('of names of people are recognized, so that they are left where they are', () => {
    const { named } = planOf(['Asked', 'Part', 'Ordered by', 'Cost centre'], [DATE, '*', 'Bo', '4711']);
    expect(named.requester).toBe('Ordered by');
  });

  it('of dates that are nothing else are stages, with clicks unless they speak of work', () => {
    const { stages } = planOf(
      [
        'Asked',
        'Part',
        'Print start',
        'Print end',
        'Washed',
        'Sanding work from',
        'Sanding work to',
        'Druck_Beginn',
      ],
      [DATE, '*', DATE, DATE, DATE, DATE, DATE, DATE],
    );
    expect(
      stages.map(({ name, start, end, isWork }) => [name, start?.heading, end?.heading, isWork]),
    ).toEqual([
      ['print', 'Print start', 'Print end', false],
      ['washed', undefined, 'Washed', false],
      ['sanding', 'Sanding work from', 'Sanding work to', true],
      ['druck', 'Druck_Beginn', undefined, false],
    ]);
  });

  it('are what the mapping says, or nothing', () => {
    const { named, stages } = planOf(['Asked', 'Part', 'Name', 'Done', 'x'], [DATE, '*', '*', DATE, DATE], {
      columns: { part: 'name', finished: null, machine: 'Part' },
      stages: [{ name: 'print', end: 'x', isWork: true }],
    });
    expect(named).toEqual({ asked: 'Asked', part: 'Name', machine: 'Part' });
    expect(stages).toMatchObject([{ name: 'print', start: null, end: { heading: 'x' }, isWork: true }]);
  });

  it('that the mapping names have to be there', () => {
    const wrong = () => planOf(['Asked', 'Part'], [DATE, '*'], { columns: { part: 'Bauteil' } });
    expect(wrong).toThrow('No column is headed "Bauteil", which the mapping names for part.');
    expect(wrong).toThrow(TableProblem);
  });

  it.each([
    ['a date', ['Part', 'Qty'], ['*', '3'], 'No column tells when a request came in.'],
    ['a part', ['Asked', 'Qty'], [DATE, '3'], 'No column tells which part was asked for.'],
  ])('have to tell %s', (_, headings, cells, message) => {
    expect(() => planOf(headings, cells)).toThrow(message);
  });
});

describe("Columns of a machine's record", () => {
  it.each([
    ['English', ['Machine', 'Started', 'Ended', 'Outcome', 'Jobs']],
    ['German', ['Drucker', 'Beginn', 'Ende', 'Ergebnis', 'Aufträge']],
    ['French', ['Imprimante', 'Début', 'Fin', 'Résultat', 'x']],
  ])('are known by their headings in %s', (_, headings) => {
    const rows = Array.from({ length: 12 }, () => ['resin 1', DATE, DATE, 'ok', '17']);
    const { places } = runPlan(tableHead(tableOf([headings, ...rows]), 'runs'), {});
    expect(places).toMatchObject({
      machine: { position: 0 },
      start: { position: 1 },
      end: { position: 2 },
      outcome: { position: 3 },
    });
  });
});

describe('tableHead', () => {
  const rows = Array.from({ length: 12 }, () => [DATE, 'ring', '3']);

  it('finds the headings below a title and empty lines', () => {
    const head = tableHead(
      tableOf([['Requests of 2026'], [], ['', '', ''], ['Asked', 'Part', 'Qty'], ...rows]),
      'jobs',
    );
    expect(head).toMatchObject({ line: 4, headings: ['Asked', 'Part', 'Qty'] });
  });

  it.each([
    ['nothing', [], 'This is no table.'],
    ['one column', [['words'], ['more words']], 'This is no table.'],
    ['no headings', rows, 'The first line looks like a request, not like headings.'],
    ['no rows', [['Asked', 'Part', 'Qty']], 'There is nothing below the headings.'],
    [
      'three rows',
      [['Asked', 'Part', 'Qty'], ...rows.slice(0, 3)],
      'There are only 3 rows below the headings.',
    ],
  ])('refuses a table with %s', (_, table, message) => {
    expect(() => tableHead(tableOf(table), 'jobs')).toThrow(message);
  });
});

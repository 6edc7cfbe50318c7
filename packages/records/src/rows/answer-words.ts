import { plainWords } from '../text/plain-words.ts';

/** What cells say in English, German, French, Spanish, Portuguese and Italian, in plain words. */
const RUSH =
  'rush, urgent, urgently, high, very high, highest, express, asap, critical, hot, yes, y, x, true, eilig, eilt, eil, dringend, sehr dringend, hoch, sehr hoch, sofort, ja, j, urgente, urgence, haute, tres urgent, oui, o, alta, muy alta, si, s, sim, alto, elevata, massima';
const CALM =
  'normal, low, medium, standard, regular, routine, no, n, false, niedrig, mittel, gering, nein, normale, basse, moyenne, non, baja, media, baixa, nao, bassa, none, keine';
const CANCELLED =
  'cancelled, canceled, withdrawn, void, storniert, abgebrochen, zuruckgezogen, annule, annulee, cancelado, cancelada, anulado, anulada, annullato, annullata';
const DONE =
  'done, finished, complete, completed, closed, delivered, ready, fertig, erledigt, abgeschlossen, ausgeliefert, geliefert, termine, terminee, fini, livre, pret, cloture, terminado, terminada, acabado, entregado, entregue, concluido, listo, pronto, cerrado, finito, completato, consegnato, chiuso';
const OPEN =
  'open, new, in progress, in work, waiting, queued, pending, on hold, offen, neu, in arbeit, in bearbeitung, wartet, ouvert, nouveau, en cours, en attente, abierto, nuevo, en curso, pendiente, aberto, novo, em curso, em andamento, pendente, aperto, nuovo, in corso, in attesa';
const FAILED =
  'failed, failure, fail, bad, scrap, scrapped, aborted, error, not ok, nok, misprint, fehler, fehldruck, fehlgeschlagen, ausschuss, abgebrochen, n i o, nio, echec, rate, rebut, fallo, fallido, defectuoso, falha, falhou, refugo, fallito, errore, scarto';
const BROKE_DOWN =
  'broke down, breakdown, broken, broken down, machine failure, machine down, down, fault, defect, defekt, ausfall, ausgefallen, storung, maschinenausfall, panne, en panne, averia, averiada, avaria, guasto';
const SUCCEEDED =
  'done, ok, okay, success, successful, succeeded, finished, complete, completed, good, yes, fertig, gut, erfolgreich, beendet, in ordnung, i o, io, reussi, termine, bien, bueno, exito, terminado, bom, sucesso, concluido, riuscito, completato, finito, buono';
const RUNNING =
  'running, printing, in progress, still running, lauft, laufend, druckt, in arbeit, en cours, imprime, en curso, imprimiendo, em curso, imprimindo, in corso, stampa';

const setOf = (list: string): ReadonlySet<string> => new Set(list.split(',').map((word) => word.trim()));
const SETS = {
  rush: setOf(RUSH),
  calm: setOf(CALM),
  cancelled: setOf(CANCELLED),
  done: setOf(DONE),
  open: setOf(OPEN),
  failed: setOf(FAILED),
  brokeDown: setOf(BROKE_DOWN),
  succeeded: setOf(SUCCEEDED),
  running: setOf(RUNNING),
} as const;

/** A question that a cell answers. */
export type AnswerWord = keyof typeof SETS;

/** Whether a cell says this, by the user's words where there are some, by the usual ones otherwise. */
export function says(cell: string, word: AnswerWord, own?: readonly string[]): boolean {
  const plain = plainWords(cell);
  if (own !== undefined) return own.some((mine) => plainWords(mine) === plain);
  return SETS[word].has(plain);
}

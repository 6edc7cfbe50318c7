import type { JobColumn, RunColumn } from './columns.ts';

/**
 * Headings as people write them in English, German, French, Spanish, Portuguese and Italian, in plain words
 * (`plainWords`). Chosen by hand; whoever writes others says so in a mapping file.
 */
export const JOB_WORDS: Readonly<Record<JobColumn, string>> = {
  job: `job, job number, job no, job id, job nr, order, order number, order no, order id, request, request number, request no, request id, ticket, id, no, number, reference, ref,
    auftrag, auftragsnummer, auftrag nr, auftragsnr, vorgang, nr, nummer, lfd nr, anfrage nr,
    commande, numero, n, no de commande, dossier, pedido, numero de pedido, pedido no, n de pedido, ordine, numero ordine, n ordine, commessa`,
  asked: `asked, asked on, asked at, asked for, requested, requested on, requested at, request date, date requested, received, received on, date received, submitted, submitted on, order date, ordered, ordered on, created, created on, created at, opened, date in, entry date,
    eingang, eingangsdatum, eingegangen, angefragt, angefragt am, anfragedatum, anfrage vom, anforderungsdatum, angefordert, angefordert am, bestellt, bestellt am, bestelldatum, auftragsdatum, erstellt, erstellt am,
    recu, recu le, demande le, date de demande, date de la demande, commande le, date de commande, cree le,
    solicitado, fecha de solicitud, fecha solicitud, recibido, fecha de pedido, fecha pedido, fecha de entrada, creado,
    data do pedido, pedido em, data de solicitacao, recebido, recebido em, data de entrada, criado em,
    richiesto, richiesto il, data richiesta, data della richiesta, data ordine, ordinato, ordinato il, ricevuto, ricevuto il, creato il`,
  part: `part, part type, part name, parts, item, article, component, product, model, file, file name, design,
    teil, teiletyp, teilename, teileart, bauteil, bauteiltyp, artikel, bezeichnung, werkstuck, datei, dateiname,
    piece, type de piece, nom de la piece, article, modele, designation, fichier,
    pieza, tipo de pieza, articulo, modelo, archivo, peca, tipo de peca, artigo, arquivo, ficheiro,
    pezzo, tipo di pezzo, tipo pezzo, articolo, modello, particolare`,
  quantity: `quantity, qty, pieces, pcs, count, copies, amount, how many, number of pieces, number of parts, no of parts, no of pieces,
    menge, anzahl, stuck, stuckzahl, stk, anzahl teile, quantite, qte, nombre, nb, nombre de pieces, nb de pieces, pieces,
    cantidad, cant, piezas, unidades, quantidade, qtd, qtde, pecas, unidades, quantita, qta, pezzi, numero pezzi`,
  process: `process, technology, method, technique, print process, printing process, printer type, machine type,
    verfahren, druckverfahren, technologie, prozess, procede, technologie, proceso, tecnologia, processo, tecnologia, processo di stampa`,
  material: `material, material type, werkstoff, materialart, matiere, materiau, materiale, materia`,
  priority: `priority, prio, rush, urgent, urgency, express, prioritat, prioritaet, dringlichkeit, dringend, eilt, eilig, eilauftrag,
    priorite, urgence, prioridad, urgencia, urgente, prioridade, priorita, urgenza`,
  promised: `promised, promised for, promised on, promise, promise date, promised date, due, due date, due on, deadline, needed by, wanted by, required by, target date,
    zugesagt, zugesagt zum, zugesagt fur, zusage, termin, wunschtermin, liefertermin, fallig, fallig am, faellig, faellig am, soll termin,
    promis, promis pour, promis le, date promise, echeance, pour le, delai, prometido, prometido para, fecha prometida, fecha limite, vencimiento, entrega prevista,
    prazo, data prometida, entrega prevista, promesso, promesso per, data promessa, scadenza, consegna prevista`,
  finished: `finished, finished on, finished at, done, done on, completed, completed on, completed at, ready, ready on, delivered, delivered on, closed, closed on, handed over, picked up, date out,
    fertig, fertig am, fertiggestellt, fertiggestellt am, erledigt, erledigt am, abgeschlossen, abgeschlossen am, ausgeliefert, geliefert, ubergeben, abgeholt,
    fini, fini le, termine, termine le, livre, livre le, pret, pret le, cloture le, terminado, terminado el, acabado, entregado, listo, cerrado,
    concluido, concluido em, entregue, entregue em, pronto, acabado em, finito, finito il, completato, completato il, consegnato, consegnato il, terminato`,
  status: `status, state, order status, job status, zustand, auftragsstatus, statut, etat, estado, estatus, situacao, stato`,
  stage: `stage, current stage, step, current step, where, now at, schritt, arbeitsschritt, aktueller schritt, stufe, steht bei, etape, poste, etapa, paso, fase, passo`,
  machine: `machine, machine name, printer, device, maschine, drucker, anlage, gerat, imprimante, maquina, impresora, impressora, macchina, stampante`,
  requester: `requester, requested by, requestor, customer, client, name, user, contact, ordered by, asked by, person, owner, email, e mail, mail,
    anforderer, angefragt von, besteller, bestellt von, auftraggeber, kunde, ansprechpartner, demandeur, demande par, nom, solicitante, solicitado por, cliente, nombre, nome, richiedente, richiesto da, committente`,
};

/** Headings that tell little, taken when no other column fits better. */
export const WEAK_JOB_WORDS: Readonly<Partial<Record<JobColumn, string>>> = {
  asked: 'date, datum, fecha, data, in, request, anfrage, demande, solicitud, richiesta, pedido, entrada',
  part: 'type, typ, tipo, description, beschreibung, descripcion, descricao, descrizione, what, art, title, titel',
  finished: 'end, ende, fin, fim, fine, out, ausgang, salida, saida, uscita',
  status: 'result, ergebnis, resultat, resultado, esito',
  stage: 'station, stand',
};

export const RUN_WORDS: Readonly<Record<RunColumn, string>> = {
  machine: JOB_WORDS.machine,
  start: `start, started, started at, start time, begin, begun, from, beginn, startzeit, gestartet, von, debut, debut le, commence, de, inicio, comienzo, desde, inizio, iniziato, da`,
  end: `end, ended, ended at, end time, finish, finished, stopped, stop, to, until, ende, endzeit, beendet, bis, fin, fini, hasta, fim, ate, fine, finito, a`,
  outcome: `outcome, result, status, state, ergebnis, ausgang, zustand, resultat, statut, etat, resultado, estado, esito, stato, risultato`,
  material: `${JOB_WORDS.material}, resin, filament, powder, harz, pulver, resine, poudre, resina, polvo, polvere`,
  job: `${JOB_WORDS.job}, jobs, build, print job, druckauftrag, tirage, trabajo, trabalho, lavoro`,
};

/** Words at the end, or the beginning, of the heading of a stage. */
export const START_WORDS =
  'start, started, begin, begun, began, from, beginn, anfang, von, gestartet, debut, commence, inicio, comienzo, desde, inizio, iniziato, da';
export const END_WORDS =
  'end, ended, finish, finished, done, to, until, stop, ende, fertig, bis, beendet, fin, fini, termine, hasta, terminado, fim, concluido, ate, fine, finito, a';
/** Words that say that start and end are those of the work, not clicks with waiting in between. */
export const WORK_WORDS =
  'work, working, hands on, arbeit, arbeits, arbeitszeit, bearbeitung, travail, trabajo, trabalho, lavoro, lavorazione';
/** Words that say nothing about which stage it is. */
export const FILLER_WORDS =
  'on, at, the, of, am, um, le, la, el, il, date, time, datum, zeit, uhrzeit, de, di, do, da';

/** The words of a list. */
export function wordsOf(list: string): string[] {
  return list.split(',').map((word) => word.trim());
}

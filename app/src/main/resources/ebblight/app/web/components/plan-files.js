// Rows that no program can know: the forecast, and high and low waters from a printed table. Typed, pasted, or from a file.

import { el, key } from '../dom.js';
import { json } from '../http-carrier.js';
import { openSheet } from './sheet.js';
import { rowsText, rowsWords, TABLES } from '../logic/plan-rows.js';

/**
 * @param kind 'waters' or 'weather'
 * @param rows those there are, or undefined
 * @param set (rows or undefined) => void
 */
export function rowsSheet(kind, rows, zone, set) {
  const table = TABLES[kind];
  const fault = el('p.fault', { role: 'alert', hidden: true });
  const text = el('textarea.rows', { rows: '8', spellcheck: 'false', autocomplete: 'off', 'aria-label': table.title, 'data-focus': `rows-${kind}` });
  text.value = rows ? rowsText(kind, rows) : `${table.heading}\n`;
  const file = el('input', {
    type: 'file', accept: '.csv,.txt,text/csv,text/plain', class: 'unseen', 'aria-label': `${table.title}: a file`,
    onchange: async () => {
      if (file.files[0]) {
        text.value = await file.files[0].text();
        file.value = '';
        text.focus();
      }
    },
  });
  openSheet(table.title, (close) => {
    async function take() {
      try {
        const whole = await json('/api/plan/table', { method: 'POST', body: JSON.stringify({ kind, name: table.title.toLowerCase(), text: text.value }) });
        close();
        set(whole.rows);
      } catch (error) {
        fault.textContent = error.message;
        fault.hidden = false;
      }
    }
    return el(
      'div.wish-body',
      {},
      table.says.map((words) => el('p', {}, words)),
      el('pre.example', {}, table.example),
      rows ? el('p', {}, el('b', {}, 'Now: '), rowsWords(kind, rows, zone), '.') : '',
      text,
      file,
      fault,
      el('div.keys', {},
        key('Take these rows', take, { class: 'act' }),
        key('Choose a file', () => file.click(), { class: 'alt' }),
        rows ? key('Leave it out', () => { close(); set(undefined); }, { class: 'alt' }) : ''),
    );
  });
}

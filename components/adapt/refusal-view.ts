import type { Refusal } from '../../engine/adapt/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import { type Pattern, withEdges } from '../../engine/pattern/index.ts'
import { el } from '../mend/dom.ts'
import { rowName } from '../pattern-facts.ts'
import { spoken } from './spoken.ts'

/** Why something cannot be done, the row that stands in the way, and what to try instead. */
export function refusalParts({ sentence, row, hint }: Refusal, pattern: Pattern): HTMLElement[] {
  const found = [...pattern.setUp, ...pattern.rows].find(({ number }) => number === row)
  return [
    el('p', {}, el('strong', {}, 'It cannot be done. '), ...spoken(sentence)),
    ...(found
      ? [
          el(
            'p',
            { class: 'reads' },
            `${rowName(pattern, found.number)} reads: `,
            el('code', {}, printRow(withEdges(found, pattern))),
          ),
        ]
      : []),
    ...(hint === null ? [] : [el('p', {}, el('strong', {}, 'To try: '), ...spoken(hint), '.')]),
  ]
}

export const refusalWords = ({ sentence, hint }: Refusal): string =>
  `It cannot be done. ${sentence}${hint === null ? '' : ` To try: ${hint}.`}`.replaceAll('`', '')

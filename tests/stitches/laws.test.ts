/** What must hold of any motions, stitch after stitch. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  catalogue,
  type Effect,
  effectOf,
  type Motion,
  type Mount,
  perform,
  stitch,
} from '../../engine/stitches/index.ts'

const count = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1)

/**
 * Every loop taken is slipped, drawn through, parked or bound off; every loop made says the same number of
 * things.
 */
function expectBooksToBalance({ takes, held, parked, made, boundOff }: Effect): void {
  const alive = new Set(
    made.flatMap(({ through, slipped }) => (slipped === null ? through : [...through, slipped])),
  )
  const gone = count(takes + held).filter((n) => !alive.has(n))
  expect(gone.length).toBe(parked + boundOff.length)
  for (const n of boundOff) expect(gone).toContain(n)
  for (const { through, twisted, twists } of made) {
    expect([twisted.length, twists.length]).toEqual([through.length, through.length])
    expect(twists.map((twist) => twist !== null)).toEqual(twisted)
    for (const n of through) expect(n).toSatisfy((it: number) => it >= 1 && it <= takes + held)
  }
}

// Binding off reaches for the loop before it, a join numbers its held loop after those taken, and a yarn
// moved for a slip stays there: those three look beyond themselves.
const selfContained = catalogue.filter(
  ({ family, effect, motions }) =>
    family !== 'bind off' && effect.held === 0 && !motions.some((motion) => motion.do === 'yarn'),
)
const anyStitches = fc.array(fc.constantFrom(...selfContained), { maxLength: 8 })
const mount = fc.constantFrom<Mount>('usual', 'turned')

describe('stitches worked one after another', () => {
  it('do together what each does alone', () => {
    fc.assert(
      fc.property(anyStitches, fc.array(mount, { minLength: 80, maxLength: 80 }), (row, mounts) => {
        const together = perform(
          row.flatMap(({ motions }) => motions),
          mounts,
        )
        let at = 0
        const made = row.flatMap((each) => {
          const alone = effectOf(each.id, mounts.slice(at, at + each.takes))
          const before = at
          at += each.takes
          return alone.made.map((loop) => ({
            ...loop,
            through: loop.through.map((n) => n + before),
            slipped: loop.slipped === null ? null : loop.slipped + before,
          }))
        })
        expect(together.takes).toBe(at)
        expect(together.made).toEqual(made)
        expectBooksToBalance(together)
      }),
    )
  })
})

describe('any sequence of slips and knits', () => {
  const slip = fc.record({
    do: fc.constant('slip' as const),
    loops: fc.integer({ min: 1, max: 3 }),
    as: fc.constantFrom('knitwise' as const, 'purlwise' as const, 'throughBack' as const),
    together: fc.boolean(),
  })
  const knit = fc.constantFrom('k', 'p', 'k2tog', 'p3tog', 'k tbl').map((id) => stitch(id).motions)
  const moves = fc.array(
    fc.oneof(
      slip.map((motion): readonly Motion[] => [motion]),
      knit,
    ),
    { maxLength: 12 },
  )

  it('takes each loop once, keeps every slipped one, and balances', () => {
    fc.assert(
      fc.property(moves, (list) => {
        const motions = list.flat()
        const slipped = motions.reduce((sum, motion) => sum + (motion.do === 'slip' ? motion.loops : 0), 0)
        const entered = motions.reduce((sum, motion) => sum + (motion.do === 'enter' ? motion.loops : 0), 0)
        const effect = perform(motions)
        expect(effect.takes).toBe(slipped + entered)
        expect(effect.made.filter((loop) => loop.slipped !== null)).toHaveLength(slipped)
        expectBooksToBalance(effect)
      }),
    )
  })
})

describe('any motions at all', () => {
  const few = fc.integer({ min: 1, max: 3 })
  const side = fc.constantFrom('front' as const, 'back' as const)
  const way = fc.constantFrom('knitwise' as const, 'purlwise' as const)
  const anyMotion: fc.Arbitrary<Motion> = fc.oneof(
    fc.record({ do: fc.constant('slip' as const), loops: few, as: way, together: fc.boolean() }),
    fc.record({ do: fc.constant('enter' as const), loops: few, leg: side, as: way }),
    fc.record({ do: fc.constantFrom('return' as const, 'meet' as const, 'park' as const), loops: few }),
    fc.record({
      do: fc.constantFrom(
        'wrap' as const,
        'draw' as const,
        'drop' as const,
        'unhold' as const,
        'castOn' as const,
      ),
    }),
    fc.record({ do: fc.constant('hold' as const), loops: few, where: side }),
    fc.record({ do: fc.constant('liftStrand' as const), from: side }),
    fc.record({ do: fc.constant('over' as const), turns: few, long: fc.boolean(), backward: fc.boolean() }),
    fc.record({
      do: fc.constant('pass' as const),
      loops: few,
      over: few,
      from: fc.constantFrom('left' as const, 'right' as const),
    }),
    fc.constantFrom('k', 'ssk', 'skp', 'ksp', 'kfb').chain((id) => fc.constantFrom(...stitch(id).motions)),
  )

  it('either balance, or are refused with a reason', () => {
    let balanced = 0
    fc.assert(
      fc.property(fc.array(anyMotion, { maxLength: 7 }), (motions) => {
        const effect = attempt(motions)
        if (effect === null) return
        balanced += 1
        expectBooksToBalance(effect)
      }),
      { numRuns: 3000 },
    )
    expect(balanced).toBeGreaterThan(50)
  })

  function attempt(motions: readonly Motion[]): Effect | null {
    try {
      return perform(motions)
    } catch (error) {
      // Refused in words of ours; a TypeError would be a hole in the bookkeeping.
      expect(error).toBeInstanceOf(Error)
      expect(error).not.toBeInstanceOf(TypeError)
      return null
    }
  }
})

describe('turning a loop on the needle', () => {
  it('twists what would lie open and opens what would be twisted, and changes nothing else', () => {
    for (const { id, takes, effect } of catalogue) {
      const turned = effectOf(
        id,
        count(takes).map((): Mount => 'turned'),
      )
      const stacks = ({ made }: Effect) => made.map(({ through }) => through)
      expect(stacks(turned), id).toEqual(stacks(effect))
      effect.made.forEach(({ through, twisted }, i) => {
        // A held loop sits as usual whatever the others do.
        const flipped = twisted.map((was, at) => ((through[at] ?? 0) > takes ? was : !was))
        expect(turned.made[i]?.twisted, id).toEqual(flipped)
      })
    }
  })
})

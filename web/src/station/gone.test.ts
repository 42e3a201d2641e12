import { describe, expect, it } from 'vitest';
import { plan } from '../hands/made/parts.ts';
import { goesOn } from './gone.ts';

describe('a room whose first case was cancelled', () => {
  const gone = { ...plan('C5', '5'), cancelled: true };

  it('should have a way to its next case if that was after the start', () => {
    const started = { ...gone, steps: [{ step: 'induction' as const, at: 1 }] };
    expect(goesOn([started], '5', 'induction')).toBe(true);
    expect(goesOn([{ ...gone, steps: [{ step: 'incision', at: 1 }] }], '5', 'induction')).toBe(
      true,
    );
  });

  it('should have none before the start, in another room, or once another case is there', () => {
    const early = { ...gone, steps: [{ step: 'wheels-in' as const, at: 1 }] };
    const started = { ...gone, steps: [{ step: 'induction' as const, at: 1 }] };
    expect(goesOn([early], '5', 'induction')).toBe(false);
    expect(goesOn([started], '6', 'induction')).toBe(false);
    expect(goesOn([started, plan('C9', '5')], '5', 'induction')).toBe(false);
    expect(goesOn([started], '5', undefined)).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';
import type { SuitePart } from '../generated/wire.ts';
import {
  busy,
  RELOAD_MS,
  reloadFor,
  shiftAt,
  SOCKET_STANDS_MS,
  STANDS_MS,
  type Upkeep,
} from './upkeep.ts';

const MINUTE = 60_000;
const NOW = 60 * MINUTE;
const up = (more: Partial<Upkeep>): Upkeep => ({
  now: NOW,
  loadedAt: 0,
  drewAt: NOW,
  provedAt: NOW,
  visible: true,
  newBuild: false,
  busy: true,
  ...more,
});
const suite = (phase: string, horizon?: number) => ({ phase, horizon }) as SuitePart;

describe('a wall that hangs for weeks', () => {
  it('should be loaded anew when its picture or its socket stands, busy or not', () => {
    expect(reloadFor(up({}))).toBeUndefined();
    expect(reloadFor(up({ drewAt: NOW - STANDS_MS }))).toBe('clock');
    expect(reloadFor(up({ drewAt: NOW - STANDS_MS, visible: false }))).toBeUndefined();
    expect(reloadFor(up({ provedAt: NOW - SOCKET_STANDS_MS }))).toBe('socket');
  });

  it('should not be loaded again and again for a fault that stays', () => {
    const stands = { drewAt: 0, provedAt: 0 };
    expect(reloadFor(up({ ...stands, loadedAt: NOW - RELOAD_MS + 1 }))).toBeUndefined();
  });

  it('should take a new build over outside the busy hours only', () => {
    expect(reloadFor(up({ newBuild: true }))).toBeUndefined();
    expect(reloadFor(up({ newBuild: true, busy: false }))).toBe('build');
    expect(busy(suite('open', NOW), NOW - 60 * MINUTE)).toBe(true);
    expect(busy(suite('open', NOW), NOW + 121 * MINUTE)).toBe(false);
    expect(busy(suite('draft', NOW), NOW - 10 * 60 * MINUTE)).toBe(false);
    expect(busy(suite('closed', NOW), NOW)).toBe(false);
    expect(busy(undefined, NOW)).toBe(false);
  });

  it('should move its picture by a few pixels every five minutes, never far', () => {
    const places = Array.from({ length: 9 }, (_, i) => shiftAt(i * 5 * MINUTE));
    expect(new Set(places.map(String)).size).toBe(9);
    expect(Math.max(...places.flat().map(Math.abs))).toBe(3);
    expect(shiftAt(0)).toEqual([0, 0]);
  });
});

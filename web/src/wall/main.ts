import { entryOver } from '../look/index.ts';
import { Live, suiteIn } from '../live/index.ts';
import { readSettings, smallestLetters } from './settings.ts';
import { keepUp } from './upkeep.ts';
import type { SunupWall } from './wall.ts';
import './wall.ts';

const settings = readSettings(location.search);
const live = new Live({ page: 'wall', screen: settings.screen, suite: suiteIn(location.search) });
const wall: SunupWall = document.createElement('sunup-wall') as SunupWall;
wall.live = live;
wall.settings = settings;
wall.style.setProperty('--letter', String(smallestLetters(settings)));
document.body.append(wall);
entryOver(live, 'wall');
live.start();
keepUp(wall, live);

// The power goes while a EEPROM is written.
import { test } from 'node:test';
import { MOMENTS, QUICK, moments } from './cut.mjs';

test('cuts with an EEPROM', async (t) => moments(t, QUICK, Math.ceil(MOMENTS / 2)));

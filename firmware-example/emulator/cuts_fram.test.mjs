// The power goes while a FRAM is written.
import { test } from 'node:test';
import { MOMENTS, moments } from './cut.mjs';
import { FRAM } from './bench.mjs';

test('cuts with a FRAM', async (t) => moments(t, FRAM, Math.floor(MOMENTS / 2)));

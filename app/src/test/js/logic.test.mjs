// Run by LogicTest with node --test; the modules are those the browser gets.
import test from 'node:test';
import assert from 'node:assert/strict';

const web = new URL('../../main/resources/ebblight/app/web/', import.meta.url);
const load = (name) => import(new URL(name, web));

test('shutter times are said as the dial says them', async () => {
  const { dialOf, say, sayThird, sayRange, fraction } = await load('axis/scale.js');
  // ISO 516 series (from memory): 30 s on the dial is 2^5 = 32 s
  assert.deepEqual(dialOf(15), { number: '30', unit: 's' });
  assert.deepEqual(dialOf(-9), { number: '1/8', unit: 's' });
  assert.equal(sayThird(-1), '0.8 s');
  assert.equal(say(128), '2 min 8 s');
  assert.equal(say(60), '1 min');
  assert.equal(sayRange(0, null), 'any time');
  assert.equal(sayRange(10, 128), '10 s to 2 min 8 s');
  assert.equal(fraction(13 / 3), '4⅓');
  assert.equal(fraction(-2 / 3), '⅔');
  assert.equal(fraction(0), '0');
});

test('stops if closed now: half the time is a stop, fading light less', async () => {
  const { stopsIfClosed, gathered, exposureValue } = await load('logic/light.js');
  assert.ok(Math.abs(stopsIfClosed(12.5, 25, 0) + 1) < 1e-12);
  // light that halves every minute: the second minute gathers half of the first, so 1 of 2 min is log2(1/1.5)
  assert.ok(Math.abs(stopsIfClosed(60, 120, 1) - Math.log2(1 / 1.5)) < 1e-12);
  assert.ok(gathered(1e6, 1) < 60 / Math.LN2 + 1e-6);
  // EV 15 is f/16 1/125 ISO 100 (APEX, common practice): exact dials give 2·4·… = 15
  assert.ok(Math.abs(exposureValue(16, 1 / 128, 100) - 15) < 1e-12);
});

test('a reading keeps the exact thirds behind its labels', async () => {
  const { dials, meterText } = await load('logic/light.js');
  const at = { fNumber: dials.fNumber.at(11), time: dials.time.at(1 / 8), iso: dials.iso.at(100) };
  assert.equal(dials.fNumber.label(at.fNumber), 'f/11');
  assert.equal(dials.time.label(at.time), '1/8 s');
  assert.equal(meterText(at), 'f/11 0.125000000000s ISO100');
});

test('a rate takes two readings half a minute apart or more', async () => {
  const { tellingReadings } = await load('logic/light.js');
  const at = (...seconds) => seconds.map((s) => ({ at: new Date(1e12 + 1000 * s).toISOString() }));
  assert.deepEqual(tellingReadings(at(0, 90, 100)), [at(0)[0], at(100)[0]]);
  assert.deepEqual(tellingReadings(at(0, 60, 100)), [at(60)[0], at(100)[0]]);
  assert.deepEqual(tellingReadings(at(80, 100)), at(100));
});

test('the guard knows the longest exposure and the latest start, by the clock of the outing', async () => {
  const { longestSeconds, latestStart, minutesLeft, leaveAt } = await load('logic/guard.js');
  // Reykjavik keeps UTC all year, Auckland is 13 h ahead in January (IANA time zone database): the clock of this machine must not matter
  for (const [zone, now] of [['Atlantic/Reykjavik', Date.UTC(2027, 0, 14, 16, 26)], ['Pacific/Auckland', Date.UTC(2027, 0, 14, 3, 26)]]) {
    const outing = { zone, guard: { leaveBy: '16:33', packingMinutes: 3 } };
    assert.equal(minutesLeft(outing, now), 7);
    // 7 min less 3 min of packing and 2 s: 3 min 58 s; with the camera's dark frame half of it
    assert.equal(longestSeconds(outing, now, false), 238);
    assert.equal(longestSeconds(outing, now, true), 119);
    assert.equal(latestStart(outing, now, 25), now + 1000 * (3 * 60 + 33));
    assert.equal(longestSeconds(outing, now + 7 * 60e3, false), 0);
    assert.equal(longestSeconds({ zone }, now, false), null);
  }
  // just past midnight: 23:50 is ten minutes ago, 00:20 is ahead
  const night = Date.UTC(2027, 0, 15, 0, 0);
  assert.equal(leaveAt({ zone: 'UTC', guard: { leaveBy: '23:50' } }, night), night - 600e3);
  assert.equal(leaveAt({ zone: 'UTC', guard: { leaveBy: '00:20' } }, night), night + 1200e3);
});

test('clock times of a zone over the change to summer time', async () => {
  const { clockIn, instantIn } = await load('logic/zone.js');
  // Paris goes from UTC+1 to UTC+2 on 28 March 2027 at 01:00 UTC (EU directive 2000/84/EC: last Sunday of March)
  const before = Date.UTC(2027, 2, 28, 0, 30);
  assert.equal(clockIn('Europe/Paris', before), '01:30');
  assert.equal(instantIn('Europe/Paris', '03:30', before), Date.UTC(2027, 2, 28, 1, 30));
  assert.equal(clockIn('Europe/Paris', Date.UTC(2027, 2, 28, 1, 30), true), '03:30:00');
  assert.equal(instantIn('Europe/Paris', 'half past', before), null);
  // a zone nobody knows must not close the page
  assert.match(clockIn('Nowhere/Atall', before), /^\d\d:\d\d$/);
});

test('a run counts in, counts down, and tells how far over it is', async () => {
  const { runAt, stopWords, stepsOf, stepAfter } = await load('logic/staff.js');
  const run = { openAt: 10_000, plannedSeconds: 25, stopsPerMinute: 0, marks: [] };
  assert.equal(runAt(run, 7_000).phase, 'count');
  assert.equal(runAt(run, 7_000).count, 3);
  assert.equal(runAt(run, 21_000).left, 14);
  assert.equal(stopWords(runAt(run, 22_500).stops), '−1.0 stop');
  assert.equal(runAt(run, 40_000).phase, 'over');
  assert.equal(runAt(run, 40_000).over, 5);
  const steps = stepsOf({ staff: { skip: ['cover'], lines: { level: 'on sand' } } });
  assert.equal(stepAfter(steps, 6), 8);
  assert.equal(steps[2].line, 'on sand');
});

test('a clock that is set is told from one that goes on, and from a phone that slept', async () => {
  const { clockSet } = await load('logic/staff.js');
  const before = { wall: 1_000_000, steady: 5_000 };
  assert.equal(clockSet(before, { wall: 1_001_200, steady: 6_000 }, true), 0);
  assert.equal(clockSet(before, { wall: 991_000, steady: 6_000 }, true), -10_000);
  assert.equal(clockSet(before, { wall: 1_011_000, steady: 6_000 }, true), 10_000);
  // the steady clock of many systems stands while they sleep
  assert.equal(clockSet(before, { wall: 1_060_000, steady: 6_000 }, false), 0);
  assert.equal(clockSet(before, { wall: 991_000, steady: 6_000 }, false), -10_000);
});

test('the address tells where we are, and back', async () => {
  const { readPlace, writePlace } = await load('logic/place.js');
  const there = { page: 'there', view: 'view-1', part: 'shot', step: 4, third: 14 };
  assert.deepEqual(readPlace(writePlace(there)), there);
  assert.equal(readPlace('#nonsense').page, 'there');
  // times as the commands read them: four minutes are 240 s, a fraction is a part of a second
  const { secondsTyped } = await load('logic/place.js');
  for (const [text, seconds] of [['4m', 240], ['4m30s', 270], ['1/60', 1 / 60], ['0.8s', 0.8], ['30', 30], ['soon', 0], ['4h', 0], ['', 0], ['1/0', 0]]) {
    assert.ok(Math.abs(secondsTyped(text) - seconds) < 1e-9, text);
  }
  assert.equal(readPlace('#there/view-1?time=4m').third, Math.round(3 * Math.log2(240)));
  assert.equal(readPlace('#there/view-1?time=soon').third, null);
  assert.equal(readPlace('#there/a%2Fb').view, 'a/b');
});

const region = (id, kind, words, more = {}) => ({ id, kind, areaFraction: 0.3, seen: true, left: [], words, ...more });
const word = (name, from, to) => ({ word: name, likely: from === undefined ? [] : [{ fromSeconds: from, toSeconds: to }], sure: [], note: '' });
const MEASURED = {
  regions: [
    region('flowing-1', 'flowing', [word('as seen', 0, 1), word('softened', 1, null), word('silky', 10, null), word('mist'), word('glass')]),
    region('drifting-1', 'drifting', [word('sharp', 0, 0.5), word('streaked', 20, null)]),
    region('fixed-1', 'fixed', [word('sharp', 0, null), word('still', 0, null)]),
    region('swaying-1', 'swaying', [word('still', 0, 0.2), word('as seen', 0, 2), word('softened', 2, null)], { areaFraction: 0.05 }),
  ],
};

test('words of a part follow one another without gap or overlap', async () => {
  const { bandsOf, rowRegions, proposedWishes, parseWish, readable } = await load('logic/parts.js');
  for (const r of MEASURED.regions) {
    const bands = bandsOf(r);
    assert.equal(bands[0].fromSeconds, 0);
    assert.equal(bands.at(-1).toSeconds, null);
    bands.slice(1).forEach((b, i) => assert.equal(b.fromSeconds, bands[i].toSeconds));
  }
  assert.deepEqual(rowRegions(MEASURED).map((r) => r.id), ['drifting-1', 'swaying-1', 'fixed-1', 'flowing-1']);
  assert.deepEqual(proposedWishes(MEASURED), { 'fixed-1': 'still', 'flowing-1': 'silky' });
  assert.deepEqual(parseWish('silky!'), { word: 'silky', closed: true });
  assert.equal(readable('flowing-1: looks like breaking waves'), 'Water: looks like breaking waves');
});

test('a wish goes on to the largest part of its kind when a stroke parts the picture anew', async () => {
  const { carriedWishes } = await load('logic/parts.js');
  assert.deepEqual(carriedWishes({ 'flowing-7': 'silky' }, MEASURED), { 'flowing-7': 'silky', 'flowing-1': 'silky' });
  assert.equal(carriedWishes({ 'flowing-1': 'silky', 'flowing-7': 'mist' }, MEASURED), null);
  assert.equal(carriedWishes({}, MEASURED), null);
});

test('verdict: holds, likely holds, misses, clash, late', async () => {
  const { axisModel } = await load('logic/parts.js');
  const { verdict } = await load('axis/lane.js');
  const limits = { leaveSeconds: null, leaveBy: '', timedSeconds: 32, fadesBeyondSeconds: null };
  const view = { wishes: { 'flowing-1': 'silky', 'fixed-1': 'still' } };
  const demand = (id, from, to, sureFrom) => ({ region: id, wish: id, likely: [{ fromSeconds: from, toSeconds: to }], sure: [{ fromSeconds: sureFrom, toSeconds: to }], note: '' });
  const weighed = { windows: [{ fromSeconds: 10, toSeconds: null, sure: { fromSeconds: 20, toSeconds: null } }], demands: [demand('flowing-1', 10, null, 20), demand('fixed-1', 0, null, 0)], worth: [], conflict: null };
  const at = (third, more = {}) => verdict(axisModel({ measured: MEASURED, weighed: { ...weighed, ...more }, third, view, limits: { ...limits, ...more.limits } }));
  assert.equal(at(15).words, 'Both wishes hold');
  assert.equal(at(11).words, 'Both wishes likely hold');
  assert.equal(at(0).words, 'Water not yet silky');
  assert.equal(at(15, { limits: { leaveSeconds: 20 } }).state, 'late');
  const conflict = { between: ['swaying-1=still', 'flowing-1=silky'], stops: 5, shorterSeconds: 0.2, longerSeconds: 10, ways: [] };
  const clash = at(3, { windows: [], conflict });
  assert.equal(clash.state, 'clash');
  assert.equal(clash.words, 'No time serves both branch and water');
});

test('the axis is drawn from plain data without a document, and escapes what it is given', async () => {
  const { axisModel } = await load('logic/parts.js');
  const { axisSvg } = await load('axis/draw.js');
  const model = axisModel({ measured: MEASURED, weighed: null, third: 14, view: { wishes: { 'flowing-1': '<b>' } }, limits: { leaveSeconds: 238, leaveBy: '"><x>', timedSeconds: 32, fadesBeyondSeconds: 300 }, strips: [] });
  for (const form of ['desk', 'low', 'phone']) {
    const svg = axisSvg(model, { width: form === 'phone' ? 390 : 1392, form });
    assert.match(svg, /^<svg /);
    assert.ok(!svg.includes('NaN') && !svg.includes('undefined'), form);
    assert.ok(!svg.includes('<x>') && !svg.includes('<b>'), form);
  }
});

test('stroke: the swing falls with what is left', async () => {
  const { swing } = await load('axis/marks.js');
  assert.equal(swing(0.3), 1);
  const falling = [0.2, 0.1, 0.035, 0.015, 0.005].map(swing);
  falling.slice(1).forEach((v, i) => assert.ok(v < falling[i]));
  assert.ok(swing(0.005) < 0.06, 'glass is all but flat');
});

test('wishes of the hour: ends never pass each other, hours go round the clock', async () => {
  const { WISHES, moved, plainWords, toggled } = await load('logic/plan.js');
  const sun = WISHES.find((w) => w.name === 'sunAltitude');
  assert.deepEqual(moved(sun, [-6, 5], 0, 1), [-5, 5]);
  assert.deepEqual(moved(sun, [5, 5], 0, 1), [5, 5]);
  assert.deepEqual(moved(sun, [-18, 5], 0, -1), [-18, 5]);
  assert.equal(sun.sentence([-6, 5]), 'Sun −6 to 5° high');
  assert.equal(WISHES.find((w) => w.name === 'sunBearing').sentence([-30, 45]), 'Sun 30° left to 45° right of the view');
  assert.equal(plainWords('relax sunAltitude by 3°'), 'Relax height of the sun by 3°');
  // plain words that are also names of wishes stay as they are
  assert.equal(plainWords('hours and heights at your place'), 'Hours and heights at your place');
  const tide = WISHES.find((w) => w.name === 'tideMetres');
  assert.deepEqual(moved(tide, [0.5, 2], 1, 1), [0.5, 2.1]);
  const hours = WISHES.find((w) => w.name === 'hours');
  assert.deepEqual(moved(hours, ['05:00', '23:45'], 1, 1), ['05:00', '00:00']);
  const days = WISHES.find((w) => w.name === 'days');
  assert.equal(days.sentence(['sun', 'mon', 'sat']), 'On Mon, Sat or Sun');
  // a wish for no day at all would be no wish
  assert.deepEqual(toggled(['sat'], 'sat'), ['sat']);
});

test('the question holds what is known and no more', async () => {
  const { questionOf, spanOf, bagOf } = await load('logic/plan.js');
  const view = { id: 'view-1', hour: { sunAltitude: [-6, 5], sunInFrame: false, tideMetres: [1, 2] } };
  const outing = { zone: 'UTC', place: { at: '1,2' }, plan: { from: '2027-01-01', to: '2027-02-01' } };
  const asked = questionOf(outing, view, '2027-01-10', null);
  // no bearing and no station: what needs them is not asked
  assert.deepEqual(Object.keys(asked).filter((k) => k in view.hour), ['sunAltitude']);
  assert.equal(asked.from, '2027-01-01');
  // a span that is over begins today and keeps its length
  assert.deepEqual(spanOf(outing.plan, '2027-03-01'), { from: '2027-03-01', to: '2027-04-01', days: 31 });
  assert.equal(questionOf({ ...outing, place: {} }, view, '2027-01-10', null), null);
  const whole = questionOf({ ...outing, place: { at: '1,2', station: 'x' }, plan: { ...outing.plan, exposure: { time: '2m' } } }, { ...view, azimuth: 270 }, '2027-01-10', bagOf({ filters: [{ takes: '6', inBag: true, measuredStops: 6.2 }, { takes: '10', inBag: false }] }, {}));
  assert.deepEqual(whole.kit.filters, ['6']);
  assert.deepEqual(whole.kit.measured, ['6=6.2']);
  assert.equal(whole.view.focalMillimetres, 24);
  assert.deepEqual(whole.tideMetres, [1, 2]);
});

test('days and hours are those of the place', async () => {
  const { addDays, cutOff, dayIn, hourIn, dayWords, guardWords } = await load('logic/plan.js');
  // 1 January 2027 is a Friday (common knowledge: any calendar)
  assert.equal(dayWords('2027-01-01'), 'Fri 1 Jan');
  assert.equal(addDays('2027-02-28', 1), '2027-03-01');
  assert.equal(dayIn('Pacific/Auckland', new Date('2027-01-01T12:00:00Z')), '2027-01-02');
  assert.equal(hourIn('Europe/Paris', '2027-07-01T12:00:00Z'), '14:00');
  assert.match(guardWords({ end: '2027-01-01T12:00:00Z', guard: { leaveBy: '2027-01-01T11:00:00Z' } }, 'UTC'), /Leave by 11:00, before the window ends/);
  assert.match(guardWords({ end: '2027-01-01T12:00:00Z', guard: { verdict: 'leave now' } }, 'UTC'), /over the way back/);
  const start = '2027-01-01T10:00:00Z';
  assert.equal(cutOff({ start, guard: { verdict: 'leave now', latestStart: null } }), true);
  assert.equal(cutOff({ start, guard: { verdict: 'leave by', latestStart: '2027-01-01T09:59:00Z' } }), true);
  assert.equal(cutOff({ start, guard: { verdict: 'leave by', latestStart: '2027-01-01T10:40:00Z' } }), false);
  assert.equal(cutOff({ start }), false);
});

test('typed rows come back as they were typed, and take the place of the station', async () => {
  const { rowsText, rowsWords, TABLES } = await load('logic/plan-rows.js');
  const { questionOf } = await load('logic/plan.js');
  const waters = [['2027-01-10T03:12Z', 5.1, 'high'], ['2027-01-10T09:40Z', 1.2, 'low']];
  assert.equal(rowsText('waters', waters), TABLES.waters.example);
  assert.equal(rowsWords('waters', waters, 'Europe/Paris'), '2 waters, Sun 10 Jan 04:12 to Sun 10 Jan 10:40');
  const air = [{ time: '2027-01-10T12:00Z', cloudCover: 0.5, windMetresPerSecond: 6 }, { time: '2027-01-10T18:00Z', cloudCover: 0.8 }];
  assert.equal(rowsText('weather', air), 'time,cloudCover,windMetresPerSecond\n2027-01-10T12:00Z,0.5,6\n2027-01-10T18:00Z,0.8,');
  const asked = questionOf({ zone: 'UTC', place: { at: '1,2', station: 'x' }, plan: { table: waters, guard: { feetMetres: 3 } } }, { id: 'view-1', hour: { tideMetres: [1, 2] } }, '2027-01-10', null);
  assert.equal(asked.station, undefined);
  assert.deepEqual(asked.table, waters);
  assert.deepEqual(asked.guard, { feetMetres: 3 });
});

test('what comes into the picture is asked for where the lens is known, and told by the clock of the outing', async () => {
  const { enteringQuestion, enteringWords } = await load('logic/entering.js');
  const now = Date.UTC(2027, 2, 20, 6, 1, 17);
  const view = { id: 'view-1', azimuth: 90 };
  assert.equal(enteringQuestion({ place: { at: '0,0' } }, { id: 'view-1' }, 60, now), null);
  assert.equal(enteringQuestion({}, view, 60, now), null);
  const asked = enteringQuestion({ place: { at: '0,0', skylineDegrees: 3 } }, { ...view, skylineDegrees: 0 }, 60, now);
  assert.equal(asked.time, '2027-03-20T06:01:00.000Z');
  assert.equal(asked.skylineDegrees, 0);
  assert.equal(asked.exposure.openSeconds, 90);
  // Auckland keeps UTC+13 until April (IANA time zone database)
  const words = enteringWords([{ body: 'sun', time: '2027-03-20T06:03:20Z' }, { body: 'moon', time: '2027-03-20T06:04:00Z' }], 'Pacific/Auckland');
  assert.match(words[0], /^The sun .* 19:03:20, .*optical finder/);
  assert.match(words[1], /^The moon .* 19:04:00/);
  assert.deepEqual(enteringWords(undefined, 'UTC'), []);
});

test('a card is laid out once and whole, in blocks that do not overlap', async () => {
  const { layOut, inSight } = await load('logic/after.js');
  const frames = (n, group) => Array.from({ length: n }, (_, i) => ({ file: `${group}-${i}.jpg`, rank: i + 1, notes: [] }));
  const groups = [{ kind: 'view', frames: frames(700, 'a') }, { kind: 'view', frames: frames(1, 'b') }, { kind: 'darks', frames: frames(9, 'd') }];
  for (const width of [390, 1024, 1440, 2560]) {
    const { blocks, height } = layOut(groups, width);
    const files = blocks.flatMap((b) => [...b.frames, ...(b.pair || []), ...(b.few || [])]).map((f) => f.file);
    assert.equal(files.length, 710, `${width}`);
    assert.equal(new Set(files).size, 710);
    blocks.forEach((b, i) => assert.ok(i === 0 || b.top === blocks[i - 1].top + blocks[i - 1].height));
    assert.equal(height, blocks[blocks.length - 1].top + blocks[blocks.length - 1].height);
    const seen = inSight(blocks, 1000, 1900);
    assert.ok(seen.every((b) => b.top < 1900 && b.top + b.height >= 1000));
    assert.equal(seen.length, blocks.filter((b) => b.top < 1900 && b.top + b.height >= 1000).length);
  }
});

test('a step of a finish is taken away, put back, and leaves no empty parts', async () => {
  const { fresh, withValue, valueOf, sentence, sayStops } = await load('logic/finish.js');
  const one = withValue(withValue(fresh(), 'shadows', 0.5), 'grade', 3);
  assert.deepEqual(one, { schema: 'finish/1', tone: { shadows: 0.5 }, grade: 3 });
  assert.deepEqual(sentence(one).map((s) => s.text), ['shadows lifted ½ stop', 'on grade 3']);
  assert.equal(valueOf(one, 'shadows'), 0.5);
  assert.deepEqual(withValue(one, 'shadows', undefined), { schema: 'finish/1', grade: 3 });
  // edges need the size of the print (docs/schemas/finish.md): without paper a width is said, with paper it goes
  const edged = withValue(fresh(), 'sharpness', { viewingCentimetres: 60, paper: 'matt' });
  assert.ok(edged.printWidthCentimetres > 0);
  assert.equal(withValue(edged, 'crop', { paper: [40, 30], border: 3 }).printWidthCentimetres, undefined);
  assert.equal(sayStops(-1.5), '−1½');
  assert.equal(sayStops(1 / 3), '+⅓');
  assert.equal(sayStops(0.01), '0');
});

test('a print measures what an inch says, and enlarging is told', async () => {
  const { printFacts, stepIn, PPI } = await load('logic/write.js');
  // 1 in = 2.54 cm exactly (ISO 31-1)
  const facts = printFacts({ width: 6000, height: 4000 }, 50.8, 300, 0);
  assert.deepEqual(facts.pixels, [6000, 4000]);
  assert.equal(facts.native, 'the picture holds 300');
  assert.match(printFacts({ width: 6000, height: 4000 }, 101.6, 300, 0).native, /150: it is enlarged/);
  assert.equal(printFacts({ width: 3000, height: 2000 }, 30, 300, 3).paperWords, '36 × 26');
  assert.equal(stepIn(PPI, 300, 1), 360);
  assert.equal(stepIn(PPI, 720, 1), 720);
});

test('the address of After keeps tool, folder and frame', async () => {
  const { readPlace, writePlace } = await load('logic/place.js');
  const hash = writePlace({ page: 'after', tool: 'sort', asked: { folder: 'a card/x&y', frame: 'a card/ü?.jpg', none: '' } });
  const back = readPlace(hash);
  assert.equal(back.page, 'after');
  assert.equal(back.tool, 'sort');
  assert.deepEqual(back.asked, { folder: 'a card/x&y', frame: 'a card/ü?.jpg' });
  assert.equal(readPlace('#there/view-1/shot/4?time=25s').view, 'view-1');
});

test('the spine leans to the better frame', async () => {
  const { leans } = await load('logic/lean.js');
  const { rows } = leans({ fixedSharpness: 1, smoothness: 0.4, clippedFraction: 0, hotPixels: 3, veilStops: null }, { fixedSharpness: 0.7, smoothness: 0.9, clippedFraction: 0, hotPixels: 3, veilStops: 0 });
  assert.deepEqual(rows.map((r) => [r.name, Math.sign(r.way)]), [['Rock', -1], ['Water', 1], ['Clipped', 0], ['Hot pixels', 0]]);
});

test('a blend asks for a time, the lull or all frames', async () => {
  const { documentOf, longestThird, shortestThird } = await load('logic/blend.js');
  assert.deepEqual(documentOf({ flowing: { way: 'time', third: 9 }, swaying: { way: 'lull' }, fixed: { way: 'whole' }, drifting: { way: 'gone' } }), {
    schema: 'blend/1',
    parts: [{ region: 'flowing', time: '8s' }, { region: 'swaying', frame: 'lull' }, { region: 'drifting', people: 'gone' }],
  });
  assert.equal(longestThird(8), 9);
  assert.equal(longestThird(7.9), 8);
  assert.equal(shortestThird(0.5), -3);
});

test('the slate says the clock on the wall, whatever the zone', async () => {
  const { slateText, wallTime } = await load('logic/slate.js');
  // IANA time zone database: Kathmandu is 5 h 45 min ahead, St John's 3 h 30 min behind in winter
  const at = Date.UTC(2027, 0, 14, 16, 15, 7, 900);
  assert.equal(wallTime('Asia/Kathmandu', at), '2027-01-14T22:00:07+05:45');
  assert.equal(wallTime('America/St_Johns', at), '2027-01-14T12:45:07-03:30');
  const said = JSON.parse(slateText({ zone: 'UTC', view: 'cove', filters: [6, 'pol'], wishes: { 'flowing-2': 'silky', 'flowing-1': 'mist', 'drifting-1': 'sharp' } }, at));
  assert.deepEqual(said, { schema: 'slate/1', time: '2027-01-14T16:15:07+00:00', view: 'cove', filters: ['6', 'pol'], wish: ['water=silky', 'cloud=sharp'] });
});

test('lines are counted in to a wave that runs back', async () => {
  const { linesWave, nextRunBack } = await load('logic/staff.js');
  const measured = { regions: [{ id: 'fixed-1' }, { id: 'flowing-1', wavePeriodSeconds: 9 }] };
  assert.equal(linesWave(measured, { 'flowing-1': 'silky' }), null);
  assert.deepEqual(linesWave(measured, { 'flowing-1': 'lines!' }), { periodSeconds: 9 });
  assert.equal(nextRunBack(1000, 9), 10000);
  // a wave sooner than one can count: the one after it
  assert.equal(nextRunBack(0, 3), 6000);
});

test('a newer page of the desk changes the plan and not what the phone wrote', async () => {
  const { newer } = await load('pocket/newer.js');
  const known = {
    name: 'A', revision: 7, packedRevision: 2, plan: { from: 'old' }, guard: { leaveBy: '17:00' }, log: [{ frame: 1 }],
    views: [{ id: 'view-1', name: 'Shore', frames: 'clip.mp4', wishes: { 'flowing-1': 'silky' } }, { id: 'view-2', name: 'mine' }],
  };
  const packed = { name: 'B', revision: 3, packedRevision: 3, plan: { from: 'new' }, log: [], views: [{ id: 'view-1', name: 'From the steps', wishes: {} }] };
  assert.equal(newer(known, { ...packed, packedRevision: 2 }), known);
  const made = newer(known, packed);
  assert.equal(made.name, 'B');
  assert.deepEqual([made.plan, made.log, made.guard, made.revision], [packed.plan, known.log, known.guard, 8]);
  assert.deepEqual(made.views, [{ id: 'view-1', name: 'From the steps', frames: 'clip.mp4', wishes: { 'flowing-1': 'silky' } }, { id: 'view-2', name: 'mine' }]);
});

test('the tide rises from now to the time to leave itself, by the typed table first', async () => {
  const { riseOf, stepOver, waterOf } = await load('logic/sea-watch.js');
  for (const seconds of [1, 299, 301, 7140, 43_000.5]) {
    const step = stepOver(seconds);
    const last = Math.floor(seconds / step) * step;
    assert.ok(step >= 1 - 1e-6 && step <= 300 && seconds - last < 0.01, `${seconds}: ${step}`);
  }
  assert.equal(riseOf([{ heightMetres: 1 }, { heightMetres: 2.5 }, { heightMetres: 2 }]), 1.5);
  assert.equal(riseOf([{ heightMetres: 1 }, { heightMetres: null }]), null);
  assert.deepEqual(waterOf({ plan: { table: [1] } }, { station: {} }), { table: [1] });
  assert.deepEqual(waterOf({}, { station: { id: 'a' } }), { station: { id: 'a' } });
  assert.equal(waterOf({}, {}), null);
});

test('a broken line is spoken of only where one is drawn', async () => {
  const { riseWords } = await load('logic/sea-watch.js');
  const leaving = { guard: { leaveBy: '17:30' } };
  const rise = (metres) => ({ metres, until: '17:30' });
  assert.match(riseWords(rise(0.62), 0.4, leaving, true), /rises 0\.6 m until 17:30: the broken line/);
  assert.match(riseWords(rise(0.02), 0.4, leaving, false), /rises less than 0\.1 m until 17:30: too little to draw/);
  assert.match(riseWords(rise(0.62), null, leaving, false), /that much higher than the line/);
  assert.match(riseWords(rise(0), 0.4, leaving, false), /does not rise/);
  assert.match(riseWords(null, 0.4, leaving, false), /not known here/);
  assert.match(riseWords(rise(0.62), 0.4, {}, false), /Set the time to leave/);
});

test('frames that were not saved when a tab fell over are back on a newer outing', async () => {
  const { framesLeft } = await load('logic/unsaved.js');
  const [first, second] = [{ frame: 1, openedAt: '2027-01-01T16:00:00.000Z' }, { frame: 2, openedAt: '2027-01-01T16:10:00.000Z' }];
  assert.deepEqual(framesLeft({ log: [first, second] }, { log: [first] }), [second]);
  assert.deepEqual(framesLeft({ log: [first, second] }, {}), [first, second]);
  assert.deepEqual(framesLeft({}, { log: [first] }), []);
  assert.deepEqual(framesLeft({ log: [first] }, { log: [{ ...first, verdict: 'keep' }] }), []);
});

/** A page's store over a server that answers when it is told to, and a browser's storage that outlives the page. */
async function storeOver(server, storage) {
  globalThis.localStorage = { getItem: (name) => storage.get(name) ?? null, setItem: (name, value) => storage.set(name, value), removeItem: (name) => storage.delete(name) };
  globalThis.fetch = async (path, { method, body }) => {
    if (method !== 'PUT') {
      return new Response(JSON.stringify({ folder: 'a', outing: server.outing }));
    }
    server.outing = { ...JSON.parse(body), revision: server.outing.revision + 1 };
    await server.answers;
    return new Response(JSON.stringify({ revision: server.outing.revision }));
  };
  const { createStore } = await load('store.js');
  const said = [];
  const store = createStore((text) => said.push(text));
  await store.load();
  return { store, said };
}

test('a frame logged while an older edit is on its way outlives the page', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const turns = async () => { for (let i = 0; i < 20; i++) { await null; } };
  const frame = { frame: 1, openedAt: '2027-01-01T16:00:00.000Z' };
  const storage = new Map();
  const server = { outing: { revision: 4, log: [] }, answers: new Promise(() => {}) };
  const { store } = await storeOver(server, storage);
  store.edit((o) => { o.name = 'Wall'; });
  store.save();
  store.edit((o) => { o.log = [...o.log, frame]; });
  store.save();
  await turns();
  assert.deepEqual(server.outing, { revision: 5, log: [], name: 'Wall' }, 'written, and the page is gone before it hears of it');
  server.answers = null;
  const after = await storeOver(server, storage);
  assert.deepEqual(after.store.outing.log, [frame]);
  assert.match(after.said.join(' '), /left out, and one frame of the log is back/);
  await after.store.save();
  assert.deepEqual(server.outing.log, [frame]);
  assert.equal(storage.size, 0);
});

test('what follows a written edit is held against the outing as it was written', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const storage = new Map();
  let answer;
  const server = { outing: { revision: 4 }, answers: new Promise((done) => { answer = done; }) };
  const { store } = await storeOver(server, storage);
  store.edit((o) => { o.name = 'Wall'; });
  const saved = store.save();
  store.edit((o) => { o.hand = 'left'; });
  answer();
  await saved;
  const after = await storeOver(server, storage);
  assert.deepEqual([after.store.outing.name, after.store.outing.hand, after.store.outing.revision], ['Wall', 'left', 5]);
  assert.match(after.said.join(' '), /are back/);
});

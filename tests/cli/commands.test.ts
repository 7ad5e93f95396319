import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const program = join(root, 'src', 'cli', 'nodulary.mjs');
const tiny = join(root, 'scenarios', 'tiny-district');
const desk = mkdtempSync(join(tmpdir(), 'nodulary-'));
const out = join(desk, 'plan');

/** Runs the program from a folder that is not the project's. */
function nodulary(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], { cwd: desk, encoding: 'utf8' });
  return { status, stdout, stderr };
}

afterAll(() => rmSync(desk, { recursive: true, force: true }));

describe('plan', () => {
  let ran: ReturnType<typeof nodulary>;
  beforeAll(() => {
    ran = nodulary('plan', tiny, '--out', out, '--iterations', '500');
  });

  it('exits with 0 and prints the headline, hectares among it, on standard output alone', () => {
    expect(ran.stderr).not.toMatch(/\n\s+at /);
    expect(ran.status).toBe(0);
    expect(ran.stdout).toMatch(/planned, hectares +[0-9 .]+/);
    expect(ran.stdout).not.toContain('Building');
  });

  it('writes the plan and its tables', () => {
    expect(readdirSync(out).sort()).toEqual([
      'allocation.csv',
      'deliveries.csv',
      'needs.csv',
      'order-list.txt',
      'orders.csv',
      'pick-list.csv',
      'plan.json',
      'problems.csv',
      'routes.geojson',
      'run.json',
      'zones.csv',
      'zones.geojson',
    ]);
    expect(JSON.parse(readFileSync(join(out, 'plan.json'), 'utf8')).format).toBe('nodulary-plan/1');
  });

  it('keeps clock and machine out of the plan: a second run writes the same bytes', () => {
    const again = join(desk, 'again');
    expect(nodulary('plan', tiny, '--out', again, '--iterations', '500').status).toBe(0);
    for (const name of readdirSync(out).filter((file) => file !== 'run.json')) {
      expect(readFileSync(join(again, name), 'utf8')).toBe(readFileSync(join(out, name), 'utf8'));
    }
  });

  it('is made again from its run.json, byte for byte, and is not where the files, the limit or the file are others', () => {
    const again = join(desk, 'from-run');
    const run = join(out, 'run.json');
    const made = nodulary('plan', tiny, '--out', again, '--again', run);
    expect(made.status).toBe(0);
    expect(made.stderr).toContain('the same plan, byte for byte');
    expect(readFileSync(join(again, 'plan.json'), 'utf8')).toBe(readFileSync(join(out, 'plan.json'), 'utf8'));
    const other = nodulary('plan', join(tiny, '..', 'demo-district'), '--out', again, '--again', run);
    expect([other.status, other.stderr]).toEqual([2, expect.stringContaining('not those that the plan was made from')]);
    expect(nodulary('plan', tiny, '--out', again, '--again', run, '--seed', '3').status).toBe(2);
    const spoiled = join(desk, 'run.json');
    const told = JSON.parse(readFileSync(run, 'utf8'));
    for (const [change, says] of [
      [{ stoppedBy: 'time' }, 'stopped by time'],
      [{ seed: 'one' }, 'does not say'],
      [{ planSha256: '0' }, 'another plan than before'],
    ] as const) {
      writeFileSync(spoiled, JSON.stringify({ ...told, ...change }));
      const { status, stderr } = nodulary('plan', tiny, '--out', again, '--again', spoiled);
      expect([status, stderr]).toEqual([1, expect.stringContaining(says)]);
    }
  });

  it('goes on from a plan that people know, after a day is closed, and lists what changes', () => {
    const day = join(desk, 'day');
    cpSync(tiny, day, { recursive: true });
    const plan = JSON.parse(readFileSync(join(out, 'plan.json'), 'utf8'));
    const decisions = [{ kind: 'day-closed', date: plan.scenario.planningFrom }];
    writeFileSync(join(day, 'decisions.json'), JSON.stringify({ format: 'nodulary-decisions/1', decisions }));
    const next = join(desk, 'next');
    const { status, stderr } = nodulary(
      'plan',
      day,
      '--out',
      next,
      '--from',
      join(out, 'plan.json'),
      '--iterations',
      '50',
    );
    expect(stderr).not.toMatch(/\n\s+at /);
    expect(status).toBe(0);
    expect(readFileSync(join(next, 'changes.txt'), 'utf8')).toMatch(/told/);
    expect(nodulary('check', day, join(next, 'plan.json')).status).toBe(0);
    writeFileSync(join(desk, 'half.json'), JSON.stringify({ format: plan.format }));
    const half = nodulary('plan', day, '--out', next, '--from', join(desk, 'half.json'));
    expect(half.status).toBe(1);
    expect(half.stderr).toContain('E8002');
    expect(half.stderr).not.toMatch(/\n\s+at /);
  });

  it('is played in past seasons: a table, the worst explained, ranges and unknowns, and no promise', () => {
    const plan = join(out, 'plan.json');
    const { status, stdout } = nodulary('replay', tiny, plan, '--draws', '40', '--with', plan);
    expect(status).toBe(0);
    expect(stdout).toContain('It promises no yield');
    expect(stdout).toContain('The worst of them');
    expect(stdout).toContain('Which unknowns matter most');
    expect(stdout).toContain('0.0 ha in the mean');
    const told = JSON.parse(nodulary('replay', tiny, plan, '--draws', '0', '--json').stdout);
    expect(told.printed.seasons.length).toBeGreaterThan(0);
    expect(told.spreads).toBeNull();
  });

  it('is played alike by one worker and by three, byte for byte', () => {
    const plan = join(out, 'plan.json');
    const [alone, three] = ['1', '3'].map((workers) =>
      nodulary('replay', tiny, plan, '--draws', '300', '--json', '--workers', workers),
    );
    expect(alone?.status).toBe(0);
    expect(JSON.parse(alone?.stdout ?? '').spreads.nitrogenKg.p50).toBeGreaterThan(0);
    expect(three?.stdout).toBe(alone?.stdout);
    expect(nodulary('replay', tiny, plan, '--workers', '0').stderr).toContain('--workers takes a whole number');
  });

  it('is told on one page that stands alone', () => {
    const page = join(desk, 'report.html');
    expect(nodulary('report', tiny, join(out, 'plan.json'), '--out', page).status).toBe(0);
    expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>[\s\S]*No yield is promised[\s\S]*<\/html>\n$/);
  });

  it('is neither played nor told where it does not hold, or is called wrongly', () => {
    const spoiled = join(desk, 'spoiled.json');
    const document = JSON.parse(readFileSync(join(out, 'plan.json'), 'utf8'));
    document.outcomes.headline.central.nitrogenKg *= 2;
    writeFileSync(spoiled, JSON.stringify(document));
    for (const command of [
      ['replay', tiny, spoiled],
      ['report', tiny, spoiled, '--out', join(desk, 'none.html')],
    ]) {
      const { status, stderr } = nodulary(...command);
      expect(status).toBe(1);
      expect(stderr).toContain('E8952');
      expect(stderr).not.toMatch(/\n\s+at /);
    }
    expect(existsSync(join(desk, 'none.html'))).toBe(false);
    expect(nodulary('report', tiny, spoiled).status).toBe(2);
    expect(nodulary('replay', tiny, join(desk, 'absent.json')).status).toBe(2);
    expect(nodulary('replay', tiny, spoiled, '--draws', 'many').status).toBe(2);
  });

  it('prints the headline as JSON where asked', () => {
    const { stdout } = nodulary('plan', tiny, '--out', join(desk, 'json'), '--iterations', '50', '--json');
    expect(JSON.parse(stdout).plannedHa).toBeGreaterThan(0);
  });

  it('lists what blocks, exits with 1 and writes nothing', () => {
    const empty = mkdtempSync(join(desk, 'empty-'));
    const target = join(desk, 'nothing');
    const { status, stderr } = nodulary('plan', empty, '--out', target);
    expect(status).toBe(1);
    expect(stderr).toContain('blocks E1');
    expect(existsSync(target)).toBe(false);
  });
});

describe('check', () => {
  it('says that the plan holds and exits with 0', () => {
    const { status, stdout } = nodulary('check', tiny, join(out, 'plan.json'));
    expect(stdout).toBe('The plan holds.\n');
    expect(status).toBe(0);
  });

  it('lists where a spoiled plan does not hold and exits with 1', () => {
    const plan = JSON.parse(readFileSync(join(out, 'plan.json'), 'utf8'));
    plan.allocation.grants.packs[0] += 1000;
    const spoiled = join(desk, 'spoiled.json');
    writeFileSync(spoiled, JSON.stringify(plan));
    const { status, stdout } = nodulary('check', tiny, spoiled);
    expect(status).toBe(1);
    expect(stdout).toMatch(/E84\d\d/);
  });

  it.each([
    ['not JSON', 'plan'],
    ['another shape', '{"format":"x"}'],
    ['nothing', 'null'],
  ])('refuses a plan file that is %s', (_, text) => {
    const file = join(desk, 'other.json');
    writeFileSync(file, text);
    const { status, stderr } = nodulary('check', tiny, file);
    expect(status).toBe(1);
    expect(stderr).not.toMatch(/\n\s+at /);
  });
});

describe('papers', () => {
  it('writes what is printed for a day, the papers of the season, calendars and routes', () => {
    const folder = join(desk, 'papers');
    const { status, stdout } = nodulary('papers', tiny, join(out, 'plan.json'), '--out', folder, '--size', 'Letter');
    expect(status).toBe(0);
    expect(stdout).toContain('index.html');
    const day = readdirSync(folder).find((name) => /^\d{4}-\d\d-\d\d$/.test(name)) ?? '';
    expect(readdirSync(join(folder, day)).sort()).toEqual([
      'distribution-lists.html',
      'handover-sheets.html',
      'hold-notes.html',
      'pick-lists.html',
      'route-sheets.html',
      'waybills.html',
    ]);
    expect(readFileSync(join(folder, day, 'route-sheets.html'), 'utf8')).toContain('size: Letter');
    for (const name of ['calendars', 'routes', 'phones'])
      expect(readdirSync(join(folder, name)).length).toBeGreaterThan(0);
  });

  it('writes none of a plan that does not hold for the files', () => {
    const plan = JSON.parse(readFileSync(join(out, 'plan.json'), 'utf8'));
    plan.delivery.loads.packs[0][0] += 1;
    const spoiled = join(desk, 'spoiled-load.json');
    writeFileSync(spoiled, JSON.stringify(plan));
    const folder = join(desk, 'no-papers');
    const { status, stderr } = nodulary('papers', tiny, spoiled, '--out', folder);
    expect(status).toBe(1);
    expect(stderr).toContain('no paper was written');
    expect(existsSync(folder)).toBe(false);
  });

  it.each([[['--size', 'A5']], [['--language', 'klingon']], [[]]])('refuses %j with what it takes', (more) => {
    const { status, stderr } = nodulary(
      'papers',
      tiny,
      join(out, 'plan.json'),
      ...(more.length ? ['--out', out] : []),
      ...more,
    );
    expect(status).toBe(2);
    expect(stderr).not.toMatch(/\n\s+at /);
  });
});

describe('wrong calls', () => {
  it.each([
    [[]],
    [['fly']],
    [['plan']],
    [['plan', tiny]],
    [['plan', tiny, '--out']],
    [['plan', tiny, '--out', out, '--speed', '3']],
    [['plan', tiny, '--out', out, '--seed', 'one']],
    [['plan', tiny, '--out', out, '--iterations', '1.5']],
    [['plan', tiny, '--out', out, '--iterations', '5', '--seconds', '1']],
    [['plan', join(tiny, 'no-such-folder'), '--out', out]],
    [['plan', join(tiny, 'scenario.json'), '--out', out]],
    [['plan', tiny, '--out', join(tiny, 'scenario.json')]],
    [['check', tiny]],
    [['check', tiny, join(desk, 'no-such-plan.json')]],
  ])('%j exits with 2 and says what to do, without a stack of calls', (args) => {
    const { status, stdout, stderr } = nodulary(...args);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr.trim()).not.toBe('');
    expect(stderr).not.toMatch(/\n\s+at /);
  });
});

describe('season', () => {
  it('tells each zone’s best day, the latest hour to leave and what holding for rain gives', () => {
    const ran = nodulary('season', tiny);
    expect(ran.status).toBe(0);
    expect(ran.stdout).toMatch(/zone +ha +best day +kept % +hold % +too late % +leave by +most is lost/);
    expect(ran.stdout).toMatch(/Western rise +\d+\.\d +2026-11-\d\d/);
    expect(ran.stdout).toContain('No logger readings are sent.');
    expect(ran.stderr).not.toMatch(/\n\s+at /);
  });
  it('refuses an hour that is none, with exit code 2', () => {
    const ran = nodulary('season', tiny, '--leave', 'noon');
    expect(ran.status).toBe(2);
    expect(ran.stderr).toContain('--leave takes an hour as 06:30, not "noon".');
  });
});

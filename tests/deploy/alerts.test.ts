/** The alert rules: each is well formed, uses metrics that exist, and says what to do. */
import { readFile } from 'node:fs/promises';
import { parser } from '@prometheus-io/lezer-promql';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { createMetrics } from '../../src/metrics/metrics.ts';
import { watchQueue } from '../../src/metrics/queue-gauges.ts';

const read = (path: string): Promise<string> => readFile(new URL(`../../${path}`, import.meta.url), 'utf8');

interface Rule {
  readonly alert: string;
  readonly expr: string;
  readonly for?: string;
  readonly labels: Readonly<Record<string, string>>;
  readonly annotations: Readonly<Record<string, string>>;
}
const { groups } = parse(await read('deploy/alerts.yaml')) as { groups: { name: string; rules: Rule[] }[] };
const rules = groups.flatMap((group) => group.rules);

const { register } = createMetrics({ version: '0', nodeVersion: 'v24', database: 'postgres' });
watchQueue(register, async () => ({ waitingCount: 0, oldestSeconds: 0, givenUpCount: 0, heldBackCount: 0 }));
const metrics = await register.getMetricsAsJSON();
const series = new Set(
  metrics.flatMap(({ name, type }) =>
    String(type) === 'histogram' ? [`${name}_bucket`, `${name}_sum`, `${name}_count`] : [name],
  ),
);
const labelsOf = new Map(
  register
    .getMetricsAsArray()
    .map((metric) => [metric.name, (metric as unknown as { labelNames: string[] }).labelNames]),
);

interface Named {
  readonly metric: string;
  readonly labels: readonly string[];
}

/** The metrics that an expression reads, with the labels that it selects by. */
function namedIn(expression: string): { named: Named[]; isWellFormed: boolean } {
  const named: Named[] = [];
  let isWellFormed = true;
  const tree = parser.parse(expression);
  tree.iterate({
    enter(node) {
      if (node.type.isError) isWellFormed = false;
      if (node.name !== 'VectorSelector') return;
      const text = expression.slice(node.from, node.to);
      const [metric = ''] = /^\w+/.exec(text) ?? [];
      named.push({
        metric,
        labels: [...text.matchAll(/(\w+)\s*(?:=|!=|=~|!~)\s*"/g)].map(([, name]) => name as string),
      });
    },
  });
  return { named, isWellFormed };
}

const nameOf = (metric: string): string => metric.replace(/_(?:bucket|sum|count)$/, '');

describe('the alert rules', () => {
  it('have names of their own', () => {
    expect(rules.length).toBeGreaterThanOrEqual(10);
    expect(new Set(rules.map(({ alert }) => alert)).size).toBe(rules.length);
    for (const { alert } of rules) expect(alert).toMatch(/^Loadline[A-Z][A-Za-z]+$/);
  });

  it.each(rules.map((rule) => [rule.alert, rule]))(
    '%s is well formed and reads metrics that exist',
    (_name, rule) => {
      const { named, isWellFormed } = namedIn(rule.expr);
      expect(isWellFormed).toBe(true);
      expect(named.length).toBeGreaterThan(0);
      for (const { metric, labels } of named) {
        expect(series).toContain(metric);
        const known = labelsOf.get(nameOf(metric)) ?? labelsOf.get(metric) ?? [];
        expect(labels.filter((label) => !known.includes(label))).toEqual([]);
      }
      if (rule.for !== undefined) expect(rule.for).toMatch(/^\d+m$/);
    },
  );

  it('would be found out if they named a metric that does not exist, or were no expression', () => {
    expect(series.has(namedIn('loadline_prompts_forgotten_total > 0').named[0]?.metric ?? '')).toBe(false);
    expect(namedIn('sum(loadline_queue_posts > 0').isWellFormed).toBe(false);
  });

  it.each(rules.map((rule) => [rule.alert, rule]))(
    '%s says what it is, how urgent, and what to do',
    (_name, rule) => {
      expect(['page', 'look']).toContain(rule.labels.severity);
      const { summary, action, ...others } = rule.annotations;
      expect(summary).toMatch(/\.$/);
      expect(action?.length).toBeGreaterThan(40);
      expect(others).toEqual({});
      // What is put into the words must come out of the expression.
      for (const [, label] of summary?.matchAll(/\$labels\.(\w+)/g) ?? []) {
        const isKept =
          new RegExp(`by \\([^)]*\\b${label}\\b`).test(rule.expr) || !/\bby\b|^(?:sum|max)\(/.test(rule.expr);
        expect([label, isKept]).toEqual([label, true]);
      }
    },
  );

  it('send nobody to a metric or command that does not exist', async () => {
    const { scripts } = JSON.parse(await read('package.json')) as { scripts: Record<string, string> };
    const words = rules.map(({ annotations }) => annotations.action).join(' ');
    for (const [name] of words.matchAll(/(?:loadline|nodejs|process)_\w+/g)) {
      expect(metrics.map((metric) => metric.name)).toContain(name);
    }
    for (const [, script] of words.matchAll(/npm run ([\w:]+)/g))
      expect(scripts).toHaveProperty([script as string]);
    // Log lines that are quoted are written somewhere.
    const sources = await Promise.all(
      [
        'src/jobs/deliveries.ts',
        'src/jobs/clock.ts',
        'src/run-bot.ts',
        'src/slack/listeners/failure-words.ts',
      ].map(read),
    );
    for (const [, line] of words.matchAll(/"([^"]+)"/g)) {
      expect(sources.some((source) => source.includes(line as string))).toBe(true);
    }
  });
});

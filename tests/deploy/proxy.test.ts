/**
 * The proxy in front of the bot: its manifests for a cluster, and that its configuration fits them and the bot. (`npm run
 * check:deploy` runs it, where HAProxy is on the machine.)
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Deployment } from 'kubernetes-models/apps/v1';
import { NetworkPolicy } from 'kubernetes-models/networking.k8s.io/v1';
import { PodDisruptionBudget } from 'kubernetes-models/policy/v1';
import { Service } from 'kubernetes-models/v1';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { EVENTS_PATH } from '../../src/slack/door/http-door.ts';
import { HTTP_LIMITS } from '../../src/slack/door/http-limits.ts';
import { INSTALL_PATH, RETURN_PATH } from '../../src/slack/workspaces/install-pages.ts';

const DEPLOY = join(import.meta.dirname, '../../deploy');
const text = (name: string): Promise<string> => readFile(join(DEPLOY, name), 'utf8');
const yaml = async (name: string) => parse(await text(name));

const configuration = await text('proxy/haproxy.cfg');
const deployment = await yaml('proxy/deployment.yaml');
const service = await yaml('proxy/service.yaml');
const policy = await yaml('proxy/network-policy.yaml');
const budget = await yaml('proxy/disruption-budget.yaml');
const kustomization = await yaml('proxy/kustomization.yaml');
const pod = deployment.spec.template.spec;
const [container] = pod.containers;
const labels = deployment.spec.template.metadata.labels;

describe('the proxy’s configuration', () => {
  it('lets through what the bot answers to strangers, and nothing else', () => {
    const [, paths = ''] = /deny_status 404 unless \{ path (.*) \}/.exec(configuration) ?? [];
    expect(paths.split(' ')).toEqual([EVENTS_PATH, INSTALL_PATH, RETURN_PATH]);
  });

  it('takes bodies as long as the bot does, and waits no longer for headers than the platform for an answer', () => {
    expect(configuration).toContain(`413 if { req.body_size gt ${HTTP_LIMITS.bodyBytes} }`);
    expect(configuration).toMatch(/timeout http-request 3s/);
  });

  it('replaces what strangers say about their address', () => {
    const [removed, added] = ['http-request del-header X-Forwarded-For', 'option forwardfor'];
    expect(configuration.indexOf(removed ?? '')).toBeGreaterThan(0);
    expect(configuration).toContain(added);
  });

  it.each(['cluster', 'compose'])('gets each of its variables from the %s', async (where) => {
    const used = [...configuration.matchAll(/"\$\{(\w+)\}"/g)].map(([, name]) => name);
    expect(used.toSorted()).toEqual(['BOT', 'CERTIFICATE', 'LISTEN']);
    const compose = (await yaml('compose.many.yaml')).services.proxy.environment;
    const given =
      where === 'compose' ? Object.keys(compose) : container.env.map(({ name }: { name: string }) => name);
    expect(given.toSorted()).toEqual(used.toSorted());
  });
});

describe('the proxy’s manifests', () => {
  it('are valid, and all mean the same pods', () => {
    expect(() => new Deployment(deployment).validate()).not.toThrow();
    expect(() => new Service(service).validate()).not.toThrow();
    expect(() => new NetworkPolicy(policy).validate()).not.toThrow();
    expect(() => new PodDisruptionBudget(budget).validate()).not.toThrow();
    for (const selector of [
      deployment.spec.selector.matchLabels,
      service.spec.selector,
      policy.spec.podSelector.matchLabels,
      budget.spec.selector.matchLabels,
    ]) {
      expect(selector).toEqual(labels);
    }
    expect(kustomization.resources.toSorted()).toEqual(
      ['deployment.yaml', 'disruption-budget.yaml', 'network-policy.yaml', 'service.yaml'].toSorted(),
    );
  });

  it('hold to what the restricted standard of pod security asks', () => {
    // kubernetes.io/docs/concepts/security/pod-security-standards, "Restricted".
    expect(pod.securityContext).toMatchObject({
      runAsNonRoot: true,
      runAsUser: 99,
      seccompProfile: { type: 'RuntimeDefault' },
    });
    expect(container.securityContext).toEqual({
      allowPrivilegeEscalation: false,
      readOnlyRootFilesystem: true,
      capabilities: { drop: ['ALL'] },
    });
    expect(pod.automountServiceAccountToken).toBe(false);
  });

  it('let it see senders’ own addresses, without which its limits mean nothing', () => {
    expect(service.spec).toMatchObject({ type: 'LoadBalancer', externalTrafficPolicy: 'Local' });
  });

  it('lead from the bot’s service to the bot’s port, and nowhere else', async () => {
    const { value: bot } = container.env.find(({ name }: { name: string }) => name === 'BOT');
    const botService = await yaml('kubernetes/service.yaml');
    const { port } = botService.spec.ports.find(({ name }: { name: string }) => name === 'http');
    expect(bot).toBe(`${botService.metadata.name}.${kustomization.namespace}.svc.cluster.local:${port}`);
    const [, toBot, ...others] = policy.spec.egress;
    expect(others).toEqual([]);
    expect(toBot).toEqual({
      to: [{ podSelector: { matchLabels: botService.spec.selector } }],
      ports: [{ port: 3000, protocol: 'TCP' }],
    });
  });

  it('ask for nothing but that it listens', () => {
    expect(container.readinessProbe.tcpSocket).toEqual({ port: 'https' });
    expect(container.livenessProbe.tcpSocket).toEqual({ port: 'https' });
    expect(pod.terminationGracePeriodSeconds).toBeGreaterThan(
      Number(/hard-stop-after (\d+)s/.exec(configuration)?.[1]),
    );
  });
});

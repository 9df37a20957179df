/** The manifests for a cluster: each is valid by the cluster's own schema, and together they fit. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Deployment } from 'kubernetes-models/apps/v1';
import { NetworkPolicy } from 'kubernetes-models/networking.k8s.io/v1';
import { PodDisruptionBudget } from 'kubernetes-models/policy/v1';
import { Namespace, Secret, Service, ServiceAccount } from 'kubernetes-models/v1';
import { describe, expect, it } from 'vitest';
import { parseAllDocuments } from 'yaml';
import packageJson from '../../package.json' with { type: 'json' };
import { knownSettings, settingOf, stopLimitSeconds } from './known-settings.ts';

const FOLDER = join(import.meta.dirname, '../../deploy/kubernetes');
const KINDS = {
  Deployment,
  NetworkPolicy,
  PodDisruptionBudget,
  Namespace,
  Secret,
  Service,
  ServiceAccount,
} as const;
type Kind = keyof typeof KINDS;

interface Manifest {
  readonly file: string;
  // biome-ignore lint/suspicious/noExplicitAny: whatever a file holds; the schema judges it
  readonly content: any;
}

const files = (await readdir(FOLDER)).filter((file) => file.endsWith('.yaml'));
const all: Manifest[] = [];
for (const file of files) {
  for (const document of parseAllDocuments(await readFile(join(FOLDER, file), 'utf8'))) {
    if (document.errors.length > 0) throw new Error(`${file}: ${document.errors.join('; ')}`);
    all.push({ file, content: document.toJS() });
  }
}
const kustomization = all.find(({ content }) => content.kind === 'Kustomization')?.content;
const manifests = all.filter(({ content }) => content.kind !== 'Kustomization');
const only = <K extends Kind>(kind: K) => manifests.find(({ content }) => content.kind === kind)?.content;

function validated(content: { kind: string }): void {
  const Model = KINDS[content.kind as Kind];
  if (!Model) throw new Error(`There is no schema here for ${content.kind}.`);
  // The schema knows no label, field or port but its own.
  new Model(content as never).validate();
}

const deployment = only('Deployment');
const pod = deployment.spec.template.spec;
const [container] = pod.containers;
const labels = deployment.spec.template.metadata.labels;

describe('the manifests', () => {
  it.each(manifests.map(({ file, content }) => [file, content]))('%s is valid', (_file, content) => {
    expect(() => validated(content)).not.toThrow();
  });

  it('would not be valid with a wrong type or a missing field', () => {
    const wrong = structuredClone(deployment);
    wrong.spec.replicas = 'two';
    expect(() => validated(wrong)).toThrow();
    const lacking = structuredClone(deployment);
    lacking.spec.selector = undefined;
    expect(() => validated(lacking)).toThrow();
  });

  it('are applied by one command, all but the secret’s example', () => {
    const listed = [...kustomization.resources].toSorted();
    expect(listed).toEqual(files.filter((file) => !/^kustomization|^secret\.example/.test(file)).toSorted());
    expect(kustomization.namespace).toBe(only('Namespace').metadata.name);
    expect(kustomization.images).toEqual([
      { name: container.image, newName: expect.any(String), newTag: packageJson.version },
    ]);
  });

  it('all mean the same pods', () => {
    const selectors = [
      deployment.spec.selector.matchLabels,
      only('Service').spec.selector,
      only('PodDisruptionBudget').spec.selector.matchLabels,
      only('NetworkPolicy').spec.podSelector.matchLabels,
      ...pod.topologySpreadConstraints.map(
        (constraint: { labelSelector: { matchLabels: object } }) => constraint.labelSelector.matchLabels,
      ),
    ];
    for (const selector of selectors) expect(selector).toEqual(labels);
  });

  it('keep one process working while machines are emptied or a version is replaced', () => {
    expect(deployment.spec.replicas).toBe(2);
    expect(only('PodDisruptionBudget').spec.minAvailable).toBe(1);
    expect(deployment.spec.strategy.rollingUpdate).toEqual({ maxSurge: 1, maxUnavailable: 0 });
    expect(
      pod.topologySpreadConstraints.map(({ topologyKey }: { topologyKey: string }) => topologyKey),
    ).toEqual(['kubernetes.io/hostname', 'topology.kubernetes.io/zone']);
  });

  it('hold to what the restricted standard of pod security asks', () => {
    // kubernetes.io/docs/concepts/security/pod-security-standards, "Restricted".
    expect(pod.securityContext).toMatchObject({
      runAsNonRoot: true,
      runAsUser: 1000,
      seccompProfile: { type: 'RuntimeDefault' },
    });
    expect(container.securityContext).toEqual({
      allowPrivilegeEscalation: false,
      readOnlyRootFilesystem: true,
      capabilities: { drop: ['ALL'] },
    });
    expect(only('Namespace').metadata.labels['pod-security.kubernetes.io/enforce']).toBe('restricted');
    expect([pod.automountServiceAccountToken, pod.hostNetwork, pod.hostPID]).toEqual([
      false,
      undefined,
      undefined,
    ]);
    for (const volume of pod.volumes) expect(Object.keys(volume)[1]).toMatch(/^(?:secret|emptyDir)$/);
  });

  it('wait for the database at the start only: later people are told when it is away, which takes a door', () => {
    expect(container.readinessProbe.httpGet).toEqual({ path: '/healthz', port: 'health' });
    expect(container.startupProbe.httpGet).toEqual({ path: '/readyz', port: 'health' });
    expect(container.livenessProbe.httpGet).toEqual({ path: '/healthz', port: 'health' });
  });

  it('say what a process needs, and how much memory it may take', () => {
    expect(container.resources.requests).toMatchObject({ cpu: '100m', memory: '192Mi' });
    expect(container.resources.limits.memory).toBe('768Mi');
  });

  it('hand over secrets as files that the secret has, each to a setting that the bot knows', async () => {
    const known = await knownSettings();
    const keys = Object.keys(only('Secret').stringData);
    const mount = container.volumeMounts.find(({ name }: { name: string }) => name === 'secrets').mountPath;
    for (const { name, value } of container.env as { name: string; value: string }[]) {
      expect(known).toContain(settingOf(name));
      if (!/TOKEN|SECRET|DATABASE_URL/.test(name)) continue;
      expect(value.startsWith(`${mount}/`)).toBe(true);
      expect(keys).toContain(value.slice(mount.length + 1));
    }
    expect(pod.volumes[0].secret.secretName).toBe(only('Secret').metadata.name);
    // An example holds no secret.
    expect(Object.values(only('Secret').stringData).join()).not.toMatch(/[0-9a-f]{16}/);
  });

  it('name the ports once: container, service and network policy agree', () => {
    const env = Object.fromEntries(
      container.env.map(({ name, value }: { name: string; value: string }) => [name, value]),
    );
    const ports = Object.fromEntries(
      container.ports.map((port: { name: string; containerPort: number }) => [port.name, port.containerPort]),
    );
    expect(ports).toEqual({
      http: Number(env.PORT),
      health: Number(env.LOADLINE_HEALTH_PORT),
      metrics: Number(env.LOADLINE_METRICS_PORT),
    });
    const { spec } = only('Service');
    expect(spec.ports.map(({ targetPort }: { targetPort: string }) => targetPort)).toEqual([
      'http',
      'metrics',
    ]);
    const policy = only('NetworkPolicy').spec;
    expect(policy.policyTypes).toEqual(['Ingress', 'Egress']);
    expect(policy.ingress.flatMap(({ ports: open }: { ports: { port: number }[] }) => open)).toEqual([
      { port: ports.metrics, protocol: 'TCP' },
    ]);
    expect(
      policy.egress.flatMap(({ ports: open }: { ports: { port: number }[] }) => open.map(({ port }) => port)),
    ).toEqual([53, 53, 443, 5432]);
  });

  it('wait longer for a stop than a stop may take', async () => {
    expect(pod.terminationGracePeriodSeconds).toBeGreaterThan(await stopLimitSeconds());
  });
});

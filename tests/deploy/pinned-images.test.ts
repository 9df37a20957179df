/** A release names the images that are not ours by their digests; `npm run check:deploy -- --release` asks for that. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { imagesWithoutDigest, namedImages } from './pinned-images.ts';

const DEPLOY = join(import.meta.dirname, '../../deploy');
const text = (name: string): Promise<string> => readFile(join(DEPLOY, name), 'utf8');
const composeFiles = await Promise.all([text('compose.yaml'), text('compose.many.yaml')]);
const kustomization = await text('kubernetes-many/kustomization.yaml');
const images = namedImages(composeFiles);

/** Of nothing: made up for the test. */
const digest = `sha256:${'0123456789abcdef'.repeat(4)}`;
const pinned = kustomization.replace('# digest: sha256:…', `digest: ${digest}`);
const environment = [...images].map(([variable, image]) => `${variable}=${image}@${digest}`).join('\n');

describe('the images that are not ours', () => {
  it('can all be named by their digests', async () => {
    const services = composeFiles.flatMap(
      (file) => Object.values(parse(file).services) as { image?: string }[],
    );
    const fetched = services.flatMap(({ image = '' }) => (image.startsWith('loadline:') ? [] : [image]));
    expect(fetched.filter((image) => image !== '')).toEqual([
      expect.stringMatching(/^\$\{POSTGRES_IMAGE:-postgres:/),
      expect.stringMatching(/^\$\{PROXY_IMAGE:-haproxy:/),
    ]);
    const node = images.get('NODE_IMAGE') ?? '';
    expect(await text('Dockerfile')).toContain(`ARG NODE_IMAGE=${node}\n`);
    expect(parse(kustomization).images).toContainEqual({
      name: 'haproxy',
      newTag: images.get('PROXY_IMAGE')?.split(':')[1],
    });
  });

  it('are asked for one by one when they have none, with the command that finds it', () => {
    const missing = imagesWithoutDigest(images, '', kustomization);
    expect(missing.map((line) => line.split(' ')[0])).toEqual([...images.keys(), 'haproxy']);
    expect(missing[0]).toMatch(/docker buildx imagetools inspect .* node:24-slim$/);
  });

  it('are as a release needs them when each has one, in the file that is there to be filled in', async () => {
    expect(imagesWithoutDigest(images, environment, pinned)).toEqual([]);
    const example = await text('env.example');
    expect(imagesWithoutDigest(images, example, pinned)).toHaveLength(images.size);
    expect(imagesWithoutDigest(images, example.replaceAll('sha256:…', digest), pinned)).toEqual([]);
  });

  it.each([
    ['a digest that is cut short', (given: string) => given.replace(digest, digest.slice(0, -1))],
    ['another tag', (given: string) => given.replace('node:24-slim', 'node:22-slim')],
    ['a tag alone', (given: string) => given.replace(`24-slim@${digest}`, '24-slim')],
  ])('do not pass with %s', (_what, change) => {
    expect(imagesWithoutDigest(images, change(environment), pinned)).toHaveLength(1);
  });
});

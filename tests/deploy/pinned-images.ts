/**
 * The images that are not ours, and whether a release names each by its digest: a tag can mean another image tomorrow. For
 * compose and the Dockerfile they stand in deploy/.env, for Kubernetes in kustomization.yaml.
 */
import { parse } from 'yaml';

const BY_DIGEST = /@sha256:[0-9a-f]{64}$/;

/** `NODE_IMAGE` → `node:24-slim`, from `${NODE_IMAGE:-node:24-slim}`. */
export function namedImages(composeFiles: readonly string[]): ReadonlyMap<string, string> {
  const named = composeFiles.flatMap((text) => [...text.matchAll(/\$\{([A-Z]+_IMAGE):-([^}]+)\}/g)]);
  return new Map(named.map(([, variable = '', image = '']) => [variable, image]));
}

/**
 * @param environment content of deploy/.env
 * @param kustomization content of deploy/kubernetes-many/kustomization.yaml
 * @returns what is not named by its digest, each with how to find it; empty: all is
 */
export function imagesWithoutDigest(
  images: ReadonlyMap<string, string>,
  environment: string,
  kustomization: string,
): string[] {
  const given = new Map(
    [...environment.matchAll(/^([A-Z_]+)=(.*)$/gm)].map(([, name = '', value = '']) => [name, value.trim()]),
  );
  const compose = [...images].flatMap(([variable, image]) => {
    const value = given.get(variable) ?? '';
    // The digest decides, so another tag beside it would be a lie.
    if (BY_DIGEST.test(value) && value.replace(BY_DIGEST, '') === image) return [];
    return [`${variable} in deploy/.env must be ${image}@sha256:…; ${howToFind(image)}`];
  });
  const { images: listed } = parse(kustomization) as {
    readonly images: readonly { readonly name: string; readonly newTag: string; readonly digest?: string }[];
  };
  const cluster = listed.flatMap(({ name, newTag, digest }) =>
    BY_DIGEST.test(`@${digest}`)
      ? []
      : [
          `${name} in deploy/kubernetes-many/kustomization.yaml has no digest; ${howToFind(`${name}:${newTag}`)}`,
        ],
  );
  return [...compose, ...cluster];
}

function howToFind(image: string): string {
  return `docker buildx imagetools inspect --format '{{.Manifest.Digest}}' ${image}`;
}

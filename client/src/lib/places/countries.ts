import { feature } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';
import address from 'world-atlas/countries-50m.json?url';
import type { Countries } from './map-layout.ts';

/** Fetches the outlines of countries (Natural Earth 1:50 million, from our own service); null where they cannot be had now. */
export async function fetchCountries(): Promise<Countries | null> {
  try {
    const answer = await fetch(address);
    if (!answer.ok) return null;
    const map = (await answer.json()) as Topology<{ countries: GeometryCollection }>;
    return feature(map, map.objects.countries).features;
  } catch {
    return null;
  }
}

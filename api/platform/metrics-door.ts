import { timingSafeEqual, createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { isExposed, settingsKey, type Settings } from './settings.ts';

/**
 * Who may read the figures about the service without being a keeper: the bearer of METRICS_TOKEN where that is set; else
 * anyone, as long as only the people at this machine reach the service. Administrators may in any case.
 */
@Injectable()
export class MetricsDoor {
  constructor(@Inject(settingsKey) private readonly settings: Settings) {}

  isOpenTo(request: Request): boolean {
    const { metricsToken } = this.settings;
    if (metricsToken === null) return !isExposed(this.settings);
    const sent = /^Bearer (\S+)$/i.exec(request.headers.authorization ?? '')?.[1] ?? '';
    return timingSafeEqual(digest(sent), digest(metricsToken));
  }
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

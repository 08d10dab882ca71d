import { Controller, Get, Header, Inject, VERSION_NEUTRAL } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { ForAnyone } from '../../platform/for-anyone.ts';
import { SigningKeys } from './signing-keys.service.ts';
import { PublishedKeysView } from './signing-keys.view.ts';

/** At the address of the service itself, where programs look for such things (RFC 8615). */
@ApiTags('signing keys')
@Controller({ path: '.well-known/jwks.json', version: VERSION_NEUTRAL })
export class PublishedKeysController {
  constructor(@Inject(SigningKeys) private readonly keys: SigningKeys) {}

  @ForAnyone()
  @Get()
  @Header('Content-Type', 'application/jwk-set+json')
  @Header('Cache-Control', 'public, max-age=300')
  @Header('Access-Control-Allow-Origin', '*')
  @Header('Cross-Origin-Resource-Policy', 'cross-origin')
  @ApiOperation({
    summary: 'The public keys that provenance sheets are checked with',
    description:
      'Without an account, from any page, and kept by caches for five minutes. A set of JSON web keys (RFC 7517).',
  })
  @ApiOkResponse({ type: PublishedKeysView })
  async getPublishedKeys(): Promise<PublishedKeysView> {
    const { keys } = await this.keys.published();
    return { keys: [...keys] };
  }
}

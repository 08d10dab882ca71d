import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { KeyRetirementRequest } from './signing-keys.dto.ts';
import { SigningKeys } from './signing-keys.service.ts';
import { SigningKeysView, SigningKeyView } from './signing-keys.view.ts';

@ApiTags('signing keys')
@Controller('signing-keys')
export class SigningKeysController {
  constructor(@Inject(SigningKeys) private readonly keys: SigningKeys) {}

  @Needs('read', 'signing-key')
  @Get()
  @ApiOperation({ summary: 'The keys that provenance sheets are and were signed with, the newest first' })
  @ApiOkResponse({ type: SigningKeysView })
  async listSigningKeys(): Promise<SigningKeysView> {
    return { items: await this.keys.list() };
  }

  @Needs('add', 'signing-key')
  @Post()
  @ApiOperation({
    summary: 'Make a new key in place of the present one',
    description:
      'The copy of the service that answers signs with it from now on, and so do others on the same folder. Sheets that the old key signed stay genuine. Refused ' +
      'with 409 where the key was set from outside.',
  })
  @ApiCreatedResponse({ type: SigningKeyView })
  @ApiProblems(400, 409, 422, 503)
  renewSigningKey(@Body() request: KeyRetirementRequest): Promise<SigningKeyView> {
    return this.keys.renew(request.reason);
  }

  @Needs('change', 'signing-key')
  @Post(':kid/retirement')
  @ApiParam({ name: 'kid', description: 'Thumbprint of the key.' })
  @ApiOperation({
    summary: 'Retire a key: one whose private part was lost, stolen or replaced',
    description:
      'Nothing is signed with it any more, and what claims to have been signed with it later is not genuine. A copy of the service whose key is retired makes itself ' +
      'a new one, unless its key was set from outside.',
  })
  @ApiCreatedResponse({ type: SigningKeyView })
  @ApiProblems(400, 404, 409, 422)
  retireSigningKey(@Param('kid') kid: string, @Body() request: KeyRetirementRequest): Promise<SigningKeyView> {
    return this.keys.retire(kid, request.reason);
  }
}

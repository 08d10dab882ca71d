import { Body, Controller, Delete, HttpCode, Inject, Param, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiNoContentResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { TextField } from '../../platform/fields.ts';
import { WarningView } from './warning.view.ts';
import { WarningsService } from './warnings.service.ts';

/** Why a warning is accepted. */
export class ConfirmationRequest {
  @TextField({ max: 500, description: 'Why it is right all the same, 1 to 500 characters.' })
  reason: string;
}

@ApiTags('warnings')
@Controller()
export class WarningsController {
  constructor(@Inject(WarningsService) private readonly warnings: WarningsService) {}

  @Needs('change', 'individual')
  @Post('individuals/:id/warnings/:code/confirmation')
  @ApiOperation({ summary: 'Accept a warning of an animal, with a reason; it stands again once its figures change' })
  @ApiCreatedResponse({ type: WarningView })
  @ApiProblems(400, 404, 422)
  confirmIndividualWarning(
    @ActingKeeper() keeper: Acting,
    @Param('id') id: string,
    @Param('code') code: string,
    @Body() request: ConfirmationRequest,
  ): Promise<WarningView> {
    return this.warnings.confirm(keeper, 'individual', id, code, request.reason);
  }

  @Needs('change', 'individual')
  @Delete('individuals/:id/warnings/:code/confirmation')
  @HttpCode(204)
  @ApiOperation({ summary: 'Take the confirmation of a warning of an animal back' })
  @ApiNoContentResponse({ description: 'The warning stands again.' })
  @ApiProblems(404)
  unconfirmIndividualWarning(@Param('id') id: string, @Param('code') code: string): Promise<void> {
    return this.warnings.takeBack('individual', id, code);
  }

  @Needs('change', 'clutch')
  @Post('clutches/:id/warnings/:code/confirmation')
  @ApiOperation({ summary: 'Accept a warning of a clutch, with a reason; it stands again once its figures change' })
  @ApiCreatedResponse({ type: WarningView })
  @ApiProblems(400, 404, 422)
  confirmClutchWarning(
    @ActingKeeper() keeper: Acting,
    @Param('id') id: string,
    @Param('code') code: string,
    @Body() request: ConfirmationRequest,
  ): Promise<WarningView> {
    return this.warnings.confirm(keeper, 'clutch', id, code, request.reason);
  }

  @Needs('change', 'clutch')
  @Delete('clutches/:id/warnings/:code/confirmation')
  @HttpCode(204)
  @ApiOperation({ summary: 'Take the confirmation of a warning of a clutch back' })
  @ApiNoContentResponse({ description: 'The warning stands again.' })
  @ApiProblems(404)
  unconfirmClutchWarning(@Param('id') id: string, @Param('code') code: string): Promise<void> {
    return this.warnings.takeBack('clutch', id, code);
  }
}

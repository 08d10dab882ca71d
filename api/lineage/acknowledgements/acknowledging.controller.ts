import { Body, Controller, Inject, Post, Req } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { NewAcknowledgementRequest } from '../../provenance/acknowledgements/acknowledgement.dto.ts';
import { AcknowledgementView } from '../../provenance/acknowledgements/acknowledgement.view.ts';
import { AcknowledgementsService } from '../../provenance/acknowledgements/acknowledgements.service.ts';
import { signalOf } from '../../platform/given-up.ts';
import { CurrentFlags } from './current-flags.service.ts';

/** Takes new acknowledgements: here it is known which flags there are. */
@ApiTags('acknowledgements')
@Controller('acknowledgements')
export class AcknowledgingController {
  constructor(
    @Inject(AcknowledgementsService) private readonly acknowledgements: AcknowledgementsService,
    @Inject(CurrentFlags) private readonly flags: CurrentFlags,
  ) {}

  @Needs('add', 'acknowledgement')
  @Post()
  @ApiOperation({
    summary: 'Acknowledge a flag of an animal or of a line, with a reason',
    description:
      'Registrars only. The flag stays in every list with its severity; who acknowledged it, when and why is told beside it. The records that cause it now are ' +
      'remembered: where another one comes to cause it, that is told too (`otherCauses`). An animal’s counts for that animal everywhere, a line’s for the audit of ' +
      'the line. 422 where nothing carries the flag now, 409 where it is acknowledged already: withdraw that first to acknowledge it anew.',
  })
  @ApiCreatedResponse({ type: AcknowledgementView })
  @ApiProblems(400, 409, 422, 503)
  addAcknowledgement(
    @ActingKeeper() keeper: Acting,
    @Body() body: NewAcknowledgementRequest,
    @Req() request: Request,
  ): Promise<AcknowledgementView> {
    const signal = signalOf(request);
    return this.acknowledgements.add(keeper, body, (subject) => this.flags.of(subject, signal));
  }
}

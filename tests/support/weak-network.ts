import { createServer, request as ask, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';

/** A request that passed, as far as tests look at it. */
export interface Passed {
  readonly method: string;
  readonly path: string;
  readonly key: string | undefined;
  readonly body: string;
}

/** The way between a browser and the service: it can be cut, lose answers, and bring another version of a file. */
export class WeakNetwork {
  /** Requests of the API that reached the service and write something, in their order. */
  readonly writes: Passed[] = [];
  /** A path and what its text is turned into on the way. */
  readonly replaced = new Map<string, (text: string) => string>();
  private readonly sockets = new Set<Socket>();
  private isCut = false;
  private isStalled = false;
  private losing: ((passed: Passed) => boolean) | null = null;

  private constructor(
    private readonly server: Server,
    private readonly target: string,
  ) {}

  /** Opens a way to the service at `target`, under an address of its own. */
  static async open(target: string): Promise<WeakNetwork> {
    const server = createServer();
    const network = new WeakNetwork(server, target.replace('localhost', '127.0.0.1'));
    server.on('request', (request, response) => void network.pass(request, response));
    server.on('connection', (socket: Socket) => {
      network.sockets.add(socket);
      socket.once('close', () => network.sockets.delete(socket));
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    return network;
  }

  get url(): string {
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  /** Nothing passes until `mend`. */
  cut(): void {
    this.isCut = true;
    for (const socket of this.sockets) socket.destroy();
  }

  /** Connections are accepted and requests taken, but nothing is passed on and no answer comes until `mend`. */
  stall(): void {
    this.isStalled = true;
  }

  mend(): void {
    if (this.isStalled) for (const socket of this.sockets) socket.destroy();
    this.isCut = this.isStalled = false;
  }

  /** The next request of this kind reaches the service and is done there; its answer is lost, and nothing passes any more. */
  loseAnswerTo(isIt: (passed: Passed) => boolean): void {
    this.losing = isIt;
  }

  async close(): Promise<void> {
    this.cut();
    await new Promise((resolve) => this.server.close(resolve));
  }

  private async pass(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (this.isCut) return void request.socket.destroy();
    if (this.isStalled) return void request.resume();
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk as Buffer);
    const body = Buffer.concat(chunks);
    const passed = {
      method: request.method ?? '',
      path: request.url ?? '',
      key: request.headers['idempotency-key']?.toString(),
      body: body.toString(),
    };
    if (passed.path.startsWith('/api/v1/') && passed.method !== 'GET') this.writes.push(passed);
    const replace = this.replaced.get(passed.path);
    const headers = { ...request.headers, ...(replace ? { 'accept-encoding': 'identity' } : {}) };
    const onward = ask(this.target + passed.path, { method: passed.method, headers });
    onward.on('error', () => response.destroy());
    onward.on('response', (answer) => void this.giveBack(answer, response, passed, replace));
    response.on('close', () => onward.destroy());
    onward.end(body);
  }

  private async giveBack(
    answer: IncomingMessage,
    response: ServerResponse,
    passed: Passed,
    replace: ((text: string) => string) | undefined,
  ): Promise<void> {
    if (this.losing?.(passed)) {
      this.losing = null;
      answer.resume();
      await new Promise((resolve) => answer.once('end', resolve));
      this.cut();
      return;
    }
    if (replace) {
      const chunks: Buffer[] = [];
      for await (const chunk of answer) chunks.push(chunk as Buffer);
      const text = replace(Buffer.concat(chunks).toString());
      const headers = { ...answer.headers };
      delete headers['content-length'];
      response.writeHead(answer.statusCode ?? 502, headers).end(text);
      return;
    }
    response.writeHead(answer.statusCode ?? 502, answer.headers);
    answer.pipe(response);
  }
}

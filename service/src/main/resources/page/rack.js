// The rack: its boards, each with its cells.

import { showCell } from "./cell.js";
import { byId, clock, degrees, fresh, put, span } from "./hands.js";
import { words } from "./words.js";

const boards = new Map();
const cells = new Map();

const keyOf = (channel) => `${channel.board}-${channel.channel}`;

function cellFor(channel, board) {
  const key = keyOf(channel);
  if (!cells.has(key)) {
    const element = fresh("cell");
    element.id = `cell-${key}`;
    board.querySelector(".cells").append(element);
    cells.set(key, element);
  }
  return cells.get(key);
}

function showBoard(board, channels, passages) {
  if (!boards.has(board.name)) {
    const element = fresh("board");
    boards.set(board.name, element);
    byId("boards").append(element);
  }
  const element = boards.get(board.name);
  element.classList.toggle("stale", board.stale);
  put(element.querySelector("h2"), words.rack.board(board.name));
  const facts = [board.serialNumber || words.rack.noSerial];
  if (board.simulated) facts.push(words.rack.speed(board.speed));
  facts.push(board.ambientCelsius === null ? words.rack.noAmbient : words.rack.ambient(degrees(board.ambientCelsius)));
  if (board.contactsClosed.length) facts.push(words.rack.contacts(board.contactsClosed.join(", ")));
  put(element.querySelector(".facts"), facts.join(" · "));
  put(element.querySelector(".age"), board.stale ? "" : words.rack.lastScan(span(board.ageSeconds)));
  const old = element.querySelector(".old");
  old.hidden = !board.stale;
  put(old, `${staleness(board)} ${words.rack.old(board.lastScanAt && span(board.ageSeconds))}`);
  const others = [];
  for (const channel of channels) {
    if (channel.role === "CELL") showCell(cellFor(channel, element), channel, passages.get(channel.passageId), board);
    else others.push(`${words.role[channel.role]} (${words.rack.channel} ${channel.channel}) ${degrees(channel.celsius)}`);
  }
  put(element.querySelector(".rest"), others.join(" · "));
}

export function staleness(board) {
  const since = board.lastScanAt === null ? words.rack.nothingHeard : words.rack.noScanSince(clock(board.lastScanAt));
  return [since, words.link[board.link], board.detail].filter(Boolean).join(" ");
}

function forget(shown, key, element) {
  element.remove();
  shown.delete(key);
}

export function showRack(rack) {
  const passages = new Map(rack.passages.map((passage) => [passage.id, passage]));
  for (const board of rack.boards) {
    showBoard(board, rack.channels.filter((channel) => channel.board === board.name), passages);
  }
  for (const [name, element] of boards) {
    if (!rack.boards.some((board) => board.name === name)) forget(boards, name, element);
  }
  const present = new Set(rack.channels.map(keyOf));
  for (const [key, element] of cells) {
    if (!present.has(key)) forget(cells, key, element);
  }
  const models = rack.boards.filter((board) => board.simulated).map((board) => board.name);
  byId("simulated").hidden = !rack.simulated;
  put(byId("simulated-what"), words.rack.models(models.join(", ")));
  put(byId("count"), words.rack.over(rack.released, rack.withdrawn));
}

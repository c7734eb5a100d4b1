/**
 * Lines of sheets with what has come of them: `received` and `damaged` are summed from the movements of the receipts that
 * were not taken back, and damaged pieces stay due until they are closed. `condition` narrows the lines.
 */
export function lineDeliveries(condition: string): string {
  return `SELECT order_sheet_id, line, part_id, quantity, received, damaged, closed,
    max(0, quantity - received - closed) AS to_come
  FROM (SELECT line.order_sheet_id, line.line, line.part_id, line.quantity,
      ${piecesThatCame('good')} AS received, ${piecesThatCame('damaged')} AS damaged,
      (SELECT ifnull(sum(pieces), 0) FROM order_line_closing AS closing
       WHERE closing.order_sheet_id = line.order_sheet_id AND closing.line = line.line) AS closed
    FROM order_sheet_line AS line WHERE ${condition})`
}

function piecesThatCame(condition: 'good' | 'damaged'): string {
  return `(SELECT ifnull(sum(movement.quantity), 0)
       FROM goods_receipt_line AS came CROSS JOIN movement ON movement.movement_id = came.movement_id
       WHERE came.order_sheet_id = line.order_sheet_id AND came.line = line.line AND condition = '${condition}'
         AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses = came.movement_id))`
}

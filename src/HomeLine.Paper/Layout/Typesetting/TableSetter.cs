using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Turns a table into row pieces; the header row returns on every page.</summary>
internal sealed class TableSetter(Typography type, TextSetter text, double tallestRow)
{
    private readonly double size = type.Body;
    private readonly double padX = type.Body * 0.4;
    private readonly double padY = type.Body * 0.16;

    public IEnumerable<Piece> Set(Table table, double width)
    {
        var columns = Columns(table, width);
        var header = HeaderRow(table, columns, width);
        yield return header;
        for (var index = 0; index < table.Rows.Length; index++)
        {
            var closesTable = index == table.Rows.Length - 1;
            var parts = RowParts(table.Rows[index], columns, width);
            for (var part = 0; part < parts.Length; part++)
                yield return parts[part] with { Repeats = header, Closes = closesTable && part == parts.Length - 1 ? 2 : 1 };
        }
    }

    /// <summary>By share, but no column narrower than its longest word while others have room to give.</summary>
    private (double X, double Width)[] Columns(Table table, double width)
    {
        var shares = table.Columns.Select(column => column.Share / table.Columns.Sum(each => each.Share) * width).ToArray();
        var needs = table.Columns.Select((column, index) => Math.Min(LongestWord(table, index), width / table.Columns.Length)).ToArray();
        var missing = shares.Zip(needs, (share, need) => Math.Max(0, need - share)).Sum();
        var spare = shares.Zip(needs, (share, need) => Math.Max(0, share - need)).Sum();
        var given = spare == 0 ? 0 : Math.Min(1, missing / spare);
        var x = 0.0;
        var columns = new (double X, double Width)[shares.Length];
        for (var index = 0; index < columns.Length; index++)
        {
            columns[index] = (x, Math.Max(shares[index], needs[index]) - (given * Math.Max(0, shares[index] - needs[index])));
            x += columns[index].Width;
        }

        return columns;
    }

    private double LongestWord(Table table, int column)
    {
        var header = text.LongestWord(table.Columns[column].Header, size, strong: true);
        var cells = table.Rows.Select(row => row.Cells[column])
            .Select(cell => text.LongestWord(cell.Text, size, strong: false) + TickRoom(cell.Tick));
        return cells.Append(header).Max() + (2 * padX) + 1;
    }

    private Piece HeaderRow(Table table, (double X, double Width)[] columns, double width)
    {
        var cells = table.Columns.Select((column, index) => text.Break(column.Header, size, columns[index].Width - (2 * padX), true))
            .ToImmutableArray();
        var height = RowHeight(cells);
        return new Piece
        {
            SpaceBefore = type.BlockGap,
            Height = height,
            KeepWithNext = true,
            Opens = [Role.Table, Role.TableRow],
            Closes = table.Rows.Length == 0 ? 2 : 1,
            Paint = (canvas, x, y) =>
            {
                Rules(canvas, x, y, width, height, columns, header: true);
                for (var index = 0; index < cells.Length; index++)
                    Cell(canvas, Role.ColumnHeader, cells[index], x + columns[index].X, y, tick: null);
            },
        };
    }

    /// <summary>A row of ordinary height is one piece; a very tall one goes on in further rows, so that it can cross pages.</summary>
    private ImmutableArray<Piece> RowParts(TableRow row, (double X, double Width)[] columns, double width)
    {
        var cells = row.Cells
            .Select((cell, index) => text.Break(cell.Text, size, columns[index].Width - (2 * padX) - TickRoom(cell.Tick)))
            .ToImmutableArray();
        var linesPerPart = Math.Max(1, (int)(tallestRow / text.LineHeight(size)));
        var parts = (cells.Max(cell => cell.Length) + linesPerPart - 1) / linesPerPart;
        return [.. Enumerable.Range(0, parts).Select(part => RowPart(
            row, cells.Select(cell => cell.Skip(part * linesPerPart).Take(linesPerPart).ToImmutableArray()).ToImmutableArray(), columns,
            width, part == 0))];
    }

    private Piece RowPart(
        TableRow row, ImmutableArray<ImmutableArray<TextLine>> cells, (double X, double Width)[] columns, double width, bool first)
    {
        var height = RowHeight(cells);
        return new Piece
        {
            Height = height,
            Opens = [Role.TableRow],
            Paint = (canvas, x, y) =>
            {
                Rules(canvas, x, y, width, height, columns, header: false);
                for (var index = 0; index < cells.Length; index++)
                    Cell(canvas, Role.DataCell, cells[index], x + columns[index].X, y, first ? row.Cells[index].Tick : null);
            },
        };
    }

    private double TickRoom(bool? tick) => tick is null ? 0 : size * 1.35;

    private double RowHeight(ImmutableArray<ImmutableArray<TextLine>> cells) =>
        (cells.Max(cell => Math.Max(1, cell.Length)) * text.LineHeight(size)) + (2 * padY);

    private void Cell(ICanvas canvas, Role role, ImmutableArray<TextLine> lines, double x, double y, bool? tick)
    {
        if (tick is { } ticked)
            TickBox(canvas, x + padX, y + padY + ((text.LineHeight(size) - (size * 0.9)) / 2), ticked);
        canvas.Begin(role);
        for (var index = 0; index < lines.Length; index++)
            text.Draw(canvas, lines[index], x + padX + TickRoom(tick), y + padY + (index * text.LineHeight(size)), size);
        canvas.End();
    }

    /// <summary>Drawn, not written: every printer shows it, and the words beside it say the same.</summary>
    private void TickBox(ICanvas canvas, double x, double y, bool ticked)
    {
        var side = size * 0.9;
        canvas.Begin(Role.Artifact);
        canvas.Frame(x, y, side, side, 1.1);
        if (ticked)
        {
            canvas.Line(x + (side * 0.18), y + (side * 0.52), x + (side * 0.42), y + (side * 0.8), 2);
            canvas.Line(x + (side * 0.42), y + (side * 0.8), x + (side * 0.86), y + (side * 0.16), 2);
        }

        canvas.End();
    }

    private static void Rules(
        ICanvas canvas, double x, double y, double width, double height, (double X, double Width)[] columns, bool header)
    {
        canvas.Begin(Role.Artifact);
        if (header)
            canvas.Line(x, y, x + width, y, 1);
        foreach (var column in columns)
            canvas.Line(x + column.X, y, x + column.X, y + height, column.X == 0 ? 1 : 0.5);
        canvas.Line(x + width, y, x + width, y + height, 1);
        canvas.Line(x, y + height, x + width, y + height, header ? 1.5 : 0.75);
        canvas.End();
    }
}

using System.Collections.Immutable;

namespace HomeLine.Paper.Layout;

/// <summary>One thing on a page, in reading order.</summary>
public abstract record Block
{
    private protected Block()
    {
    }
}

/// <summary>A heading; level 1 once per document.</summary>
public sealed record Heading(int Level, string Text) : Block;

/// <summary>A paragraph.</summary>
public sealed record Paragraph(RichText Text, TextRank Rank = TextRank.Body) : Block;

/// <summary>How loud a paragraph speaks.</summary>
public enum TextRank
{
    Body,

    /// <summary>The main message.</summary>
    Lead,
    Small,
}

/// <summary>Points, each with a bullet.</summary>
public sealed record BulletList(ImmutableArray<RichText> Items) : Block;

/// <summary>Bold label and value, one to a line.</summary>
public sealed record FactLines(ImmutableArray<Fact> Facts) : Block;

/// <summary>A label and its value.</summary>
public sealed record Fact(string Label, string Value);

/// <summary>Whom to call, in boxes beside one another or, in one column, below one another.</summary>
public sealed record ContactStrip(ImmutableArray<Contact> Contacts) : Block;

/// <summary>A number to call and when.</summary>
public sealed record Contact(string When, string Number);

/// <summary>A table with a header row that returns on every page.</summary>
public sealed record Table(ImmutableArray<TableColumn> Columns, ImmutableArray<TableRow> Rows) : Block;

/// <summary>A column.</summary>
/// <param name="Header">Its header cell.</param>
/// <param name="Share">Its part of the width, relative to the other columns.</param>
public sealed record TableColumn(string Header, double Share);

/// <summary>A row; as many cells as the table has columns.</summary>
public sealed record TableRow(ImmutableArray<TableCell> Cells);

/// <summary>A cell of text, with a tick box drawn before it when <paramref name="Tick"/> is given.</summary>
/// <param name="Text">The words. They carry the meaning; the box only repeats it.</param>
/// <param name="Tick">Ticked, not ticked, or no box.</param>
public sealed record TableCell(RichText Text, bool? Tick = null);

/// <summary>A bordered box that stays on one page when it can.</summary>
/// <param name="Title">Its heading (level 2); empty for none.</param>
/// <param name="Content">What stands inside.</param>
/// <param name="Border">How heavy the border is.</param>
public sealed record Callout(string Title, ImmutableArray<Block> Content, Border Border = Border.Thin) : Block;

/// <summary>The line around a box.</summary>
public enum Border
{
    Thin,
    Heavy,

    /// <summary>Heavy, with the title in white on black.</summary>
    Banner,
}

/// <summary>Two blocks beside one another; stacked when the edition has one column or the pair is too tall.</summary>
/// <param name="Left">Read first.</param>
/// <param name="Right">Read second.</param>
/// <param name="LeftShare">Part of the width that goes to the left block, above 0 and below 1.</param>
public sealed record SideBySide(Block Left, Block Right, double LeftShare = 0.5) : Block;

/// <summary>Lines to write on by hand.</summary>
/// <param name="Labels">One line each; the label stands at its start and may be empty.</param>
public sealed record WritingLines(ImmutableArray<string> Labels) : Block;

/// <summary>Blocks that stay on one page when they can.</summary>
public sealed record KeepTogether(ImmutableArray<Block> Content) : Block;

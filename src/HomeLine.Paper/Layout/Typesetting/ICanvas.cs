namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Size and weight of drawn text.</summary>
internal readonly record struct TextStyle(double Size, bool Strong);

/// <summary>How wide text is. The seam to the engine that owns the fonts.</summary>
internal interface ITextMeasure
{
    /// <summary>Width in points.</summary>
    double Width(string text, TextStyle style);

    /// <summary>The text with everything the fonts cannot show replaced by a visible box.</summary>
    string Printable(string text);
}

/// <summary>Where pages are drawn, origin at the top left, points. The seam to the engine that writes the file.</summary>
internal interface ICanvas
{
    void Text(string text, double x, double baseline, TextStyle style, bool white = false);

    void Line(double x1, double y1, double x2, double y2, double thickness);

    /// <summary>The line lies inside the given rectangle.</summary>
    void Frame(double x, double y, double width, double height, double thickness);

    void Fill(double x, double y, double width, double height);

    /// <summary>Opens an element of the document's structure; everything drawn until its end belongs to it.</summary>
    void Begin(Role role);

    void End();
}

/// <summary>What a drawn thing is to a screen reader. The structure types of ISO 32000-1, 14.8.4.</summary>
internal enum Role
{
    Heading1,
    Heading2,
    Heading3,
    Paragraph,
    List,
    ListItem,
    ListLabel,
    ListBody,
    Table,
    TableRow,
    ColumnHeader,
    DataCell,
    Section,

    /// <summary>Not part of the text: lines, boxes, page furniture.</summary>
    Artifact,
}

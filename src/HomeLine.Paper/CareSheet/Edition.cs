namespace HomeLine.Paper;

/// <summary>How large a care sheet is printed.</summary>
public enum Edition
{
    /// <summary>14-point text; a typical sheet fits one page.</summary>
    Normal,

    /// <summary>18-point text in one column; as many pages as it needs.</summary>
    LargePrint,
}

namespace HomeLine.Exchange.Csv;

/// <summary>One thing wrong in one place of an import file.</summary>
/// <param name="File">The file's name.</param>
/// <param name="Line">The line of the file where the row begins, the header being line 1; also 1 when the whole file is meant.</param>
/// <param name="Column">The column's name; empty when the whole row is meant.</param>
/// <param name="Value">What stands there, cut to 80 characters.</param>
/// <param name="Reason">What is wrong and what would be right, in plain words.</param>
public sealed record RowProblem(string File, int Line, string Column, string Value, string Reason)
{
    /// <summary>One line for a person: where, what stands there, what is wrong.</summary>
    public override string ToString()
    {
        string column = Column.Length > 0 ? $", {Column}" : "";
        string value = Value.Length > 0 ? $" '{Value}':" : "";
        return $"{File} line {Line}{column}:{value} {Reason}";
    }
}

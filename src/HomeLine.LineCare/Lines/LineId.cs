namespace HomeLine.LineCare.Lines;

/// <summary>Identifies one vascular access device in one patient, for example <c>P03-1</c>. Unique in the agency.</summary>
/// <param name="Value">The agency's own identifier, never empty.</param>
public readonly record struct LineId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

namespace HomeLine.LineCare.Lines;

/// <summary>Identifies one patient of the agency, for example <c>P03</c>.</summary>
/// <param name="Value">The agency's own identifier, never empty.</param>
public readonly record struct PatientId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

namespace HomeLine.Planning.Bounding;

/// <summary>A set of up to 256 patients of a nurse-day. Those beyond are never remembered, which only makes the bound weaker.</summary>
internal readonly record struct Seen(ulong A, ulong B, ulong C, ulong D)
{
    public static Seen Of(int patient) => patient switch
    {
        < 64 => new(1UL << patient, 0, 0, 0),
        < 128 => new(0, 1UL << (patient - 64), 0, 0),
        < 192 => new(0, 0, 1UL << (patient - 128), 0),
        < 256 => new(0, 0, 0, 1UL << (patient - 192)),
        _ => default,
    };

    public bool Has(in Seen one) => ((A & one.A) | (B & one.B) | (C & one.C) | (D & one.D)) != 0;

    public bool IsWithin(in Seen other) => ((A & ~other.A) | (B & ~other.B) | (C & ~other.C) | (D & ~other.D)) == 0;

    public Seen With(in Seen other) => new(A | other.A, B | other.B, C | other.C, D | other.D);

    public Seen Kept(in Seen by) => new(A & by.A, B & by.B, C & by.C, D & by.D);
}

namespace HomeLine.Agency;

/// <summary>Why something a person asked for was not done, with what they can do about it.</summary>
/// <param name="Code">Stable code, explained in docs/reasons.md.</param>
/// <param name="Sentence">One plain sentence.</param>
/// <param name="Action">The safe next step.</param>
public sealed record Refusal(string Code, string Sentence, string Action);

/// <summary>The answer of a use case: done with a value, or refused with a reason. Nothing is stored when refused.</summary>
public readonly record struct Outcome<T>
{
    private readonly T? value;

    private Outcome(T? value, Refusal? refusal)
    {
        this.value = value;
        Refusal = refusal;
    }

    /// <summary>The reason, when refused.</summary>
    public Refusal? Refusal { get; }

    /// <summary>Whether it was done.</summary>
    public bool Succeeded => Refusal is null;

    /// <summary>The value, when done.</summary>
    /// <exception cref="InvalidOperationException">It was refused.</exception>
    public T Value => Refusal is null ? value! : throw new InvalidOperationException($"Refused: {Refusal.Code}");

    public static implicit operator Outcome<T>(Refusal refusal) => new(default, refusal);

    public static implicit operator Outcome<T>(T value) => new(value, null);
}

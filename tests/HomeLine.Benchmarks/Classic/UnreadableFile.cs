namespace HomeLine.Benchmarks.Classic;

/// <summary>A file that is not what it should be; the message says where and what, for the person who chose the file.</summary>
internal sealed class UnreadableFileException : Exception
{
    public UnreadableFileException(string message)
        : base(message)
    {
    }

    public UnreadableFileException(string message, Exception inner)
        : base(message, inner)
    {
    }

    public UnreadableFileException()
    {
    }
}

using System.Text;

namespace HomeLine.Benchmarks.Load;

/// <summary>One thing on a page that answers to a hand: what it is, what it says, and under which number each event is handled.</summary>
/// <param name="Tag">The element's name; empty where only a handler of something already drawn was renewed.</param>
/// <param name="Id">Its id; empty for none.</param>
/// <param name="Text">What stands in it.</param>
/// <param name="Handlers">Number of the handler by event, for example <c>click</c>.</param>
internal sealed record DrawnControl(string Tag, string Id, string Text, IReadOnlyDictionary<string, ulong> Handlers);

/// <summary>
/// Reads the drawing instructions of an interactive page as far as a hand needs them: elements with event handlers. The form is the framework's own: tables of
/// 20-byte frames and of strings, their places in the last 20 bytes.
/// </summary>
internal static class DrawnBatch
{
    private const int FrameBytes = 20, Element = 1, Text = 2, Attribute = 3, Markup = 8;

    public static List<DrawnControl> ControlsOf(byte[] batch)
    {
        int frames = BitConverter.ToInt32(batch, batch.Length - 16);
        int strings = BitConverter.ToInt32(batch, batch.Length - 4);
        int count = BitConverter.ToInt32(batch, frames);
        var found = new List<DrawnControl>();
        for (int i = 0; i < count; i++)
        {
            if (Kind(i) == Element)
            {
                int end = i + Int(i, 4);
                int next = i + 1;
                string id = "";
                var handlers = new Dictionary<string, ulong>(StringComparer.Ordinal);
                for (; next < end && Kind(next) == Attribute; next++)
                {
                    if (String(Int(next, 4)) == "id") id = String(Int(next, 8));
                    Note(next, handlers);
                }

                if (handlers.Count > 0)
                    found.Add(new DrawnControl(String(Int(i, 8)), id, string.Concat(Enumerable.Range(next, Math.Max(0, end - next)).Where(f => Kind(f) is Text or Markup).Select(f => String(Int(f, 4)))), handlers));
                i = next - 1;
            }
            else if (Kind(i) == Attribute)
            {
                var renewed = new Dictionary<string, ulong>(StringComparer.Ordinal);
                Note(i, renewed);
                if (renewed.Count > 0) found.Add(new DrawnControl("", "", "", renewed));
            }
        }

        return found;

        int Kind(int frame) => Int(frame, 0);

        int Int(int frame, int at) => BitConverter.ToInt32(batch, frames + 4 + (frame * FrameBytes) + at);

        void Note(int frame, Dictionary<string, ulong> handlers)
        {
            ulong handler = BitConverter.ToUInt64(batch, frames + 4 + (frame * FrameBytes) + 12);
            string name = String(Int(frame, 4));
            if (handler != 0 && name.StartsWith("on", StringComparison.Ordinal)) handlers[name[2..]] = handler;
        }

        string String(int index)
        {
            if (index < 0) return "";
            using var reader = new BinaryReader(new MemoryStream(batch, writable: false), Encoding.UTF8);
            reader.BaseStream.Position = BitConverter.ToInt32(batch, strings + (index * 4));
            return reader.ReadString();
        }
    }
}

using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Protocol;

namespace HomeLine.Benchmarks.Load;

/// <summary>The wire of an interactive page: the framework's binary hub protocol under the name that the page's hub asks for.</summary>
internal sealed class CircuitWire : IHubProtocol
{
    private readonly MessagePackHubProtocol _messages = new();

    public string Name => "blazorpack";

    public int Version => _messages.Version;

    public TransferFormat TransferFormat => _messages.TransferFormat;

    public bool IsVersionSupported(int version) => _messages.IsVersionSupported(version);

    public bool TryParseMessage(ref ReadOnlySequence<byte> input, IInvocationBinder binder, [NotNullWhen(true)] out HubMessage? message) =>
        _messages.TryParseMessage(ref input, binder, out message);

    public void WriteMessage(HubMessage message, IBufferWriter<byte> output) => _messages.WriteMessage(message, output);

    public ReadOnlyMemory<byte> GetMessageBytes(HubMessage message) => _messages.GetMessageBytes(message);
}

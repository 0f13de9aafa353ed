using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace HomeLine.Planning.Routing;

/// <summary>
/// Access to an array's cell without the bounds check, for the innermost loops only: there the checks cost a fifth of the time. Debug builds
/// check every access.
/// </summary>
internal static class Cells
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ref T At<T>(T[] array, int index)
    {
        Debug.Assert((uint)index < (uint)array.Length, "a cell outside its array");
        return ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(array), (nint)(uint)index);
    }
}

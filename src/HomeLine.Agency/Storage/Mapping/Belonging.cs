using System.Linq.Expressions;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

/// <summary>Whose a row is. The database refuses rows of patients and lines it does not hold; nobody with rows is ever deleted.</summary>
internal static class Belonging
{
    public static void OfPatient<T>(this EntityTypeBuilder<T> builder, Expression<Func<T, object?>> patient)
        where T : class =>
        builder.HasOne<Patient>().WithMany().HasForeignKey(patient).HasPrincipalKey(p => p.Id).OnDelete(DeleteBehavior.Restrict);

    public static void OnLine<T>(this EntityTypeBuilder<T> builder, Expression<Func<T, object?>> line)
        where T : class =>
        builder.HasOne<Line>().WithMany().HasForeignKey(line).HasPrincipalKey(l => l.Id).OnDelete(DeleteBehavior.Restrict);
}

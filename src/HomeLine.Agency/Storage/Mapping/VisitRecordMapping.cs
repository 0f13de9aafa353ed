using HomeLine.Agency.Visits;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class VisitRecordMapping : IEntityTypeConfiguration<VisitRecord>
{
    public void Configure(EntityTypeBuilder<VisitRecord> builder)
    {
        builder.NumberedRows("visit_records").WrittenOnce();
        builder.HasAlternateKey(r => r.Id);
        // The database's own word that one form counts once, and that a record is amended once.
        builder.HasIndex(r => r.Submission).IsUnique();
        builder.HasIndex(r => r.Amends).IsUnique();
        builder.HasIndex(r => r.Visit);
        builder.Property(r => r.Entry).AsJson();
        builder.Property(r => r.Events).AsJson();
        builder.Property(r => r.Answered).AsJson();
        builder.Property(r => r.Flags).AsJson();
        builder.OfPatient(r => r.Patient);
    }
}

internal sealed class CoSignatureMapping : IEntityTypeConfiguration<CoSignature>
{
    public void Configure(EntityTypeBuilder<CoSignature> builder)
    {
        builder.ToTable("visit_cosignatures");
        builder.WrittenOnce().HasKey(s => s.Record);
        builder.HasOne<VisitRecord>().WithMany().HasForeignKey(s => s.Record).HasPrincipalKey(r => r.Id).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class PractitionerNoticeMapping : IEntityTypeConfiguration<PractitionerNotice>
{
    public void Configure(EntityTypeBuilder<PractitionerNotice> builder)
    {
        builder.NumberedRows("practitioner_notices").Changeable();
        builder.Property(n => n.Id).IsRequired();
        builder.HasIndex(n => n.Id).IsUnique();
        builder.OfPatient(n => n.Patient);
        builder.HasOne<VisitRecord>().WithMany().HasForeignKey(n => n.Record).HasPrincipalKey(r => r.Id).OnDelete(DeleteBehavior.Restrict);
    }
}

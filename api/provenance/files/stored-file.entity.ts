import { Check, Column, CreateDateColumn, Entity, PrimaryColumn } from 'typeorm';

/** What is known of a file that is stored under its hash; its bytes lie outside the database. */
@Entity('stored_file')
@Check('stored_file_hash', `hash ~ '^[0-9a-f]{64}$'`)
@Check('stored_file_media_type', `media_type in ('application/pdf', 'image/jpeg', 'image/png', 'image/webp')`)
@Check('stored_file_bytes', 'bytes > 0')
@Check('stored_file_width', 'width > 0')
@Check('stored_file_height', 'height > 0')
export class StoredFile {
  /** SHA-256 of the bytes as they are stored, hexadecimal. */
  @PrimaryColumn('text')
  hash: string;

  @Column({ name: 'media_type', type: 'text' })
  mediaType: 'application/pdf' | 'image/jpeg' | 'image/png' | 'image/webp';

  @Column('integer')
  bytes: number;

  /** Pixels; null for a document. */
  @Column({ type: 'integer', nullable: true })
  width: number | null;

  @Column({ type: 'integer', nullable: true })
  height: number | null;

  @CreateDateColumn({ name: 'created_at', type: 'timestamptz', precision: 3 })
  createdAt: Date;
}
